package main

import (
	"context"
	"fmt"
)

// runLatency measures the built program in a browser, as she uses it. It prints
// lines that benchstat reads among others that it passes over; to compare two
// trees, let each be measured several times:
//
//	go run ./tools/dev latency --repeat-each 6 > new.txt
func runLatency(ctx context.Context, p place, args []string) error {
	f, err := p.frontend(ctx)
	if err != nil {
		return err
	}
	if err := f.install(ctx); err != nil {
		return err
	}
	if err := f.build(ctx); err != nil {
		return err
	}
	browser, err := p.chromium(ctx)
	if err != nil {
		return err
	}
	bin, err := p.buildProgram(ctx)
	if err != nil {
		return err
	}
	fmt.Fprintln(p.log, browser)
	return p.npm(ctx, []string{"LEVIGATE_BIN=" + bin, chromiumVar + "=" + browser}, append([]string{"run", "--silent", "latency", "--"}, args...)...)
}
