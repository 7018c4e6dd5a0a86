package main

import (
	"context"
	"fmt"
	"path/filepath"
	"runtime"
)

// runProgram builds the program and starts its server, passing flags on. The
// address is printed by the program itself, the only one that knows it when
// the port is 0.
func runProgram(ctx context.Context, p place, args []string) error {
	bin := filepath.Join("bin", "levigate")
	if runtime.GOOS == "windows" {
		bin += ".exe"
	}
	fmt.Fprintf(p.log, "building %s\n", bin)
	if err := p.goTool(ctx, "build", "-o", bin, "./cmd/levigate"); err != nil {
		return fmt.Errorf("go build: %w", err)
	}
	fmt.Fprintf(p.log, "starting %s serve; Ctrl-C ends it\n", bin)
	err := p.program(ctx, filepath.Join(p.root, bin), append([]string{"serve"}, args...)...).Run()
	if ctx.Err() != nil {
		return nil // ended on request
	}
	return err
}
