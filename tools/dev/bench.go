package main

import "context"

// runBenchmarks leaves standard output to go test alone, so that it can be kept
// in a file and two such files compared:
//
//	go tool -modfile=tools/external/go.mod benchstat old.txt new.txt
func runBenchmarks(ctx context.Context, p place, _ []string) error {
	return p.goTool(ctx, "test", "-run", "^$", "-bench", ".", "-benchmem", "-count", "6", "./...")
}
