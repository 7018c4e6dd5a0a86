package main

import (
	"context"
	"errors"
	"fmt"
	"strings"
)

const fuzzTime = "30s"

// target is one fuzz function.
type target struct{ pkg, name string }

// fuzzAll runs every fuzz target of the tree in turn: go test takes one at a
// time. Like the stages, it goes on after one that failed.
func (p place) fuzzAll(ctx context.Context) error {
	listed, err := p.goOutput(ctx, "test", "-list", "^Fuzz", "./...")
	if err != nil {
		return fmt.Errorf("list of fuzz targets: %w", err)
	}
	var failed []error
	for _, t := range fuzzTargets(listed) {
		fmt.Fprintf(p.log, "-- %s %s, %s\n", t.pkg, t.name, fuzzTime)
		err := p.goTool(ctx, "test", "-run", "^$", "-fuzz", "^"+t.name+"$", "-fuzztime", fuzzTime, t.pkg)
		if ctx.Err() != nil {
			return ctx.Err()
		}
		if err != nil {
			failed = append(failed, fmt.Errorf("%s %s: %w", t.pkg, t.name, err))
		}
	}
	return errors.Join(failed...)
}

// fuzzTargets reads the output of go test -list, which names a package's
// targets one a line and the package after them.
func fuzzTargets(listed string) []target {
	var all []target
	var names []string
	for l := range strings.Lines(listed) {
		f := strings.Fields(l)
		switch {
		case len(f) == 1 && strings.HasPrefix(f[0], "Fuzz"):
			names = append(names, f[0])
		case len(f) >= 2 && f[0] == "ok":
			for _, n := range names {
				all = append(all, target{f[1], n})
			}
			names = nil
		}
	}
	return all
}
