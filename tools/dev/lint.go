package main

import (
	"context"
	"fmt"
	"strings"
)

func runLint(ctx context.Context, p place, _ []string) error {
	return runStages(ctx, p.log, p.lintStages())
}

func (p place) lintStages() []stage {
	return []stage{
		{"gofmt", func(context.Context) error {
			files, err := unformatted(p.root)
			if err != nil {
				return err
			}
			if len(files) > 0 {
				return fmt.Errorf("run gofmt -w on\n  %s", strings.Join(files, "\n  "))
			}
			return nil
		}},
		{"vet", func(ctx context.Context) error {
			return p.goTool(ctx, "vet", "./...")
		}},
		// The checker has a go.mod of its own, so that what it needs never
		// enters the program's.
		{"staticcheck", func(ctx context.Context) error {
			return p.goTool(ctx, "tool", "-modfile=tools/external/go.mod", "staticcheck", "./...")
		}},
	}
}
