package main

import (
	"context"
	"fmt"
	"path/filepath"
	"runtime"
)

// buildProgram links the program and gives where it is.
func (p place) buildProgram(ctx context.Context) (string, error) {
	bin := filepath.Join("bin", "levigate")
	if runtime.GOOS == "windows" {
		bin += ".exe"
	}
	if err := p.goTool(ctx, "build", "-o", bin, "./cmd/levigate"); err != nil {
		return "", fmt.Errorf("go build: %w", err)
	}
	return filepath.Join(p.root, bin), nil
}

// browserStages use the program as she does: the built one, in a browser, on
// workspaces that are thrown away.
func (p place) browserStages() []stage {
	var browser string
	return []stage{
		{"chromium", func(ctx context.Context) error {
			var err error
			browser, err = p.chromium(ctx)
			if err == nil {
				fmt.Fprintln(p.log, browser)
			}
			return err
		}},
		{"browser tests", func(ctx context.Context) error {
			if browser == "" {
				return fmt.Errorf("not run, since there is no browser")
			}
			if _, err := findNode(ctx); err != nil {
				return fmt.Errorf("not run: %w", err)
			}
			bin, err := p.buildProgram(ctx)
			if err != nil {
				return err
			}
			return p.npm(ctx, []string{"LEVIGATE_BIN=" + bin, chromiumVar + "=" + browser}, "run", "--silent", "e2e")
		}},
	}
}
