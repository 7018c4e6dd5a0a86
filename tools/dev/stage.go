package main

import (
	"context"
	"fmt"
	"io"
	"strings"
	"time"
)

// stage is one part of a longer command.
type stage struct {
	name string
	run  func(ctx context.Context) error
}

// runStages runs every stage, also after one that failed, so that one run shows
// all that is wrong. Each says how long it took. The error names those that
// failed. Only an interrupt ends it early.
func runStages(ctx context.Context, log io.Writer, stages []stage) error {
	var failed []string
	began := time.Now()
	for _, s := range stages {
		fmt.Fprintf(log, "== %s\n", s.name)
		at := time.Now()
		err := s.run(ctx)
		took := seconds(time.Since(at))
		if ctx.Err() != nil {
			return fmt.Errorf("interrupted in %s", s.name)
		}
		if err != nil {
			failed = append(failed, s.name)
			fmt.Fprintf(log, "== %s FAILED after %s: %v\n", s.name, took, err)
			continue
		}
		fmt.Fprintf(log, "== %s passed in %s\n", s.name, took)
	}
	if len(failed) > 0 {
		return fmt.Errorf("%d of %d stages failed: %s", len(failed), len(stages), strings.Join(failed, ", "))
	}
	fmt.Fprintf(log, "all %d stages passed in %s\n", len(stages), seconds(time.Since(began)))
	return nil
}

func seconds(d time.Duration) string { return fmt.Sprintf("%.1f s", d.Seconds()) }
