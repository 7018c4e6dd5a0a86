package main

import "context"

func runTest(ctx context.Context, p place, _ []string) error {
	return runStages(ctx, p.log, p.testStages("./..."))
}

// testStages is what must pass before a change is kept; args go to go test.
func (p place) testStages(args ...string) []stage {
	stages := append(p.frontendStages(), p.lintStages()...)
	stages = append(stages,
		stage{"go test", func(ctx context.Context) error {
			return p.goTool(ctx, append([]string{"test"}, args...)...)
		}},
		stage{"generated pages", func(ctx context.Context) error {
			return p.goTool(ctx, "run", "./tools/gendocs", "-check")
		}},
	)
	return append(stages, p.browserStages()...)
}
