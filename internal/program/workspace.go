package program

import (
	"context"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"

	"levigate"
	"levigate/examples"
	"levigate/internal/store/memory"
	"levigate/wire"
)

// OpenStore opens the workspace kept in a folder, and makes folder and workspace
// where there is none; fresh says that it was made just now.
type OpenStore func(ctx context.Context, dir string) (store levigate.Store, fresh bool, err error)

// inMemory keeps nothing.
func inMemory(context.Context, string) (levigate.Store, bool, error) { return memory.New(), true, nil }

// Open opens the workspace, once. A fresh one is given the demo formulas as
// drafts.
func (p *Program) Open(ctx context.Context) error {
	if p.store != nil {
		return nil
	}
	dir := p.Workspace
	if dir == "" {
		var err error
		if dir, err = workspaceOf(runtime.GOOS, os.Getenv, os.UserHomeDir); err != nil {
			return err
		}
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

// workspaceOf is where a system keeps what belongs to a person and not to a
// program's settings.
func workspaceOf(system string, env func(string) string, home func() (string, error)) (string, error) {
	under := func(parts ...string) (string, error) {
		h, err := home()
		if err != nil {
			return "", &levigate.Error{Code: levigate.Invalid, Message: "this system does not say where your files are kept", Help: "name a folder with --workspace", Cause: err}
		}
		return filepath.Join(append([]string{h}, parts...)...), nil
	}
	switch system {
	case "windows":
		if dir := env("LocalAppData"); dir != "" {
			return filepath.Join(dir, "levigate"), nil
		}
		return under("AppData", "Local", "levigate")
	case "darwin":
		return under("Library", "Application Support", "levigate")
	}
	// A relative one is invalid by the specification of base folders.
	if dir := env("XDG_DATA_HOME"); filepath.IsAbs(dir) {
		return filepath.Join(dir, "levigate"), nil
	}
	return under(".local", "share", "levigate")
}
