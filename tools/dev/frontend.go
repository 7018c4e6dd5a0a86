package main

import (
	"context"
	"fmt"
	"path/filepath"
)

// frontend is the bench in the browser, as npm and Vite make it.
type frontend struct {
	p    place
	dir  string
	node string // the version found
}

func (p place) frontend(ctx context.Context) (frontend, error) {
	node, err := findNode(ctx)
	return frontend{p, filepath.Join(p.root, filepath.FromSlash(benchDir)), node}, err
}

// install fetches the packages of the lock unless they are there.
func (f frontend) install(ctx context.Context) error {
	hash, err := hashOf(f.dir, f.node, "package.json", "package-lock.json")
	if err != nil {
		return err
	}
	at := filepath.Join(f.dir, "node_modules", ".stamp")
	if stamped(at, hash) {
		fmt.Fprintln(f.p.log, "npm packages are those of the lock")
		return nil
	}
	if err := f.p.npm(ctx, nil, "ci", "--no-audit", "--no-fund"); err != nil {
		return fmt.Errorf("npm ci: %w", err)
	}
	return stamp(at, hash)
}

// build bundles the bench unless the bundle is of these sources.
func (f frontend) build(ctx context.Context) error {
	hash, err := hashOf(f.dir, f.node, "package-lock.json", "index.html", "vite.config.ts", "licences.ts", "tsconfig.json", "src")
	if err != nil {
		return err
	}
	at := filepath.Join(f.dir, "dist", "app", ".stamp")
	if stamped(at, hash) {
		fmt.Fprintln(f.p.log, "the bench is built from these sources")
		return nil
	}
	if err := f.p.npm(ctx, nil, "run", "--silent", "build"); err != nil {
		return fmt.Errorf("vite build: %w", err)
	}
	return stamp(at, hash)
}
