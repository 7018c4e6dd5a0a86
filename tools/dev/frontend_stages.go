package main

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
)

// frontendStages check and build the bench. They come before the Go stages, so
// that what Go tests is what it embeds.
func (p place) frontendStages() []stage {
	// One cause, one message: what needs the packages is not tried without.
	missing := errors.New("not run, since the packages are not here")
	ready := missing
	var f frontend
	script := func(name string) func(context.Context) error {
		return func(ctx context.Context) error {
			if ready != nil {
				return ready
			}
			return p.npm(ctx, nil, "run", "--silent", name)
		}
	}
	return []stage{
		{"lock names no host", func(context.Context) error {
			return lockIsOpen(filepath.Join(p.root, filepath.FromSlash(benchDir), "package-lock.json"))
		}},
		{"npm ci", func(ctx context.Context) error {
			var err error
			if f, err = p.frontend(ctx); err != nil {
				return err
			}
			if err = f.install(ctx); err == nil {
				ready = nil
			}
			return err
		}},
		{"tsc", script("types")},
		{"biome", script("lint")},
		{"vitest", script("test")},
		{"vite build", func(ctx context.Context) error {
			if ready != nil {
				return ready
			}
			return f.build(ctx)
		}},
		{"bundle size", func(context.Context) error {
			if ready != nil {
				return ready
			}
			load, err := firstLoad(filepath.Join(f.dir, "dist", "app"))
			if err != nil {
				return err
			}
			fmt.Fprint(p.log, load)
			return load.within(mostFirstLoad)
		}},
	}
}
