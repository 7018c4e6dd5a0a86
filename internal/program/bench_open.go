package program

import (
	"context"
	"io/fs"
	"strings"

	"levigate"
	"levigate/examples"
	"levigate/internal/store/sqlite"
	"levigate/wire"
)

// OpenStore opens the workspace kept in a folder, and makes folder and workspace
// where there is none; fresh says that it was made just now.
type OpenStore func(ctx context.Context, dir string) (store levigate.Store, fresh bool, err error)

// onDisk keeps it in one SQLite file.
func onDisk(_ context.Context, dir string) (levigate.Store, bool, error) {
	fresh := !sqlite.Exists(dir)
	s, err := sqlite.Open(dir)
	if err != nil {
		return nil, false, err
	}
	return s, fresh, nil
}

// Open opens the workspace, once. A fresh one is given the demo formulas as
// drafts.
func (p *Program) Open(ctx context.Context) error {
	if p.store != nil {
		return nil
	}
	dir, err := WorkspaceDir(p.Workspace)
	if err != nil {
		return err
	}
	store, fresh, err := p.OpenStore(ctx, dir)
	if err != nil {
		return err
	}
	p.store, p.bench = store, NewBench(p, store)
	if fresh {
		return p.bench.demo(ctx)
	}
	return nil
}

// demo puts the formulas of the demo workshop in as drafts.
func (b *Bench) demo(ctx context.Context) error {
	names, err := fs.Glob(examples.Files, "*"+suffix)
	if err != nil {
		return err
	}
	for _, name := range names {
		data, err := fs.ReadFile(examples.Files, name)
		if err != nil {
			return err
		}
		id := "demo-" + strings.ToLower(strings.TrimSuffix(name, suffix))
		if _, err := b.CreateDraft(ctx, &wire.NewDraft{ID: id, File: string(data)}); err != nil && levigate.CodeOf(err) != levigate.Conflict {
			return err
		}
	}
	return nil
}
