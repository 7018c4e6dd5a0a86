package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// runProgram builds the program and starts its server, passing flags on. The
// address is printed by the program itself, the only one that knows it when
// the port is 0.
func runProgram(ctx context.Context, p place, args []string) error {
	// Go compiles while npm works: what takes long on a first run is the
	// compiling, and the bench is only needed at the end, to be embedded. What
	// does not compile is reported by the build that counts, below.
	compiled := make(chan struct{})
	go func() {
		defer close(compiled)
		quiet := p
		quiet.log = &strings.Builder{}
		quiet.goTool(ctx, "build", "./...")
	}()
	err := p.buildBench(ctx)
	if err != nil && ctx.Err() == nil {
		fmt.Fprintln(p.log, "the bench could not be built; going on would show an older one or none")
	}
	<-compiled
	if err != nil {
		return err
	}
	fmt.Fprintln(p.log, "building bin/levigate")
	bin, err := p.buildProgram(ctx)
	if err != nil {
		return err
	}
	fmt.Fprintln(p.log, "starting levigate serve; Ctrl-C ends it")
	err = p.program(ctx, bin, append([]string{"serve", "--open"}, args...)...).Run()
	if ctx.Err() != nil {
		return nil // ended on request
	}
	return err
}

// buildBench brings the bench up to date. Without Node it says so and leaves
// the program as it is: everything but the bench works.
func (p place) buildBench(ctx context.Context) error {
	f, err := p.frontend(ctx)
	if none, ok := errors.AsType[errNoNode](err); ok {
		fmt.Fprintf(p.log, "the bench is not built here: %v\n", none)
		if _, err := os.Stat(filepath.Join(f.dir, "dist", "app", "index.html")); err == nil {
			fmt.Fprintln(p.log, "the one built earlier is served; it may be older than its sources")
		} else {
			fmt.Fprintln(p.log, "the rest works; formulas are shown as read-only pages")
		}
		return nil
	}
	if err != nil {
		return err
	}
	if err := f.install(ctx); err != nil {
		return err
	}
	return f.build(ctx)
}
