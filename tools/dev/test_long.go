package main

import (
	"context"
	"os"
)

// runTestLong is test with the long tests let in, then every fuzz target for a
// while. -count=1 since a kept result would say nothing about today's tree.
func runTestLong(ctx context.Context, p place, _ []string) error {
	if err := os.Setenv("LEVIGATE_LONG", "1"); err != nil {
		return err
	}
	stages := p.testStages("-count=1", "-timeout", "60m", "./...")
	return runStages(ctx, p.log, append(stages, stage{"fuzz", p.fuzzAll}))
}
