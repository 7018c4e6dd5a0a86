package main

import "context"

// runDocs writes the pages that come from the code; test checks that they were.
func runDocs(ctx context.Context, p place, _ []string) error {
	return p.goTool(ctx, "run", "./tools/gendocs")
}
