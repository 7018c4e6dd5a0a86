package program

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"runtime"

	"levigate"
	"levigate/internal/store/sqlite"
)

// WorkspaceDir is the folder a workspace is kept in: the one named, else
// levigate in the user's data folder.
func WorkspaceDir(named string) (string, error) {
	if named != "" {
		return named, nil
	}
	data, err := dataDir(runtime.GOOS, os.Getenv, os.UserHomeDir)
	if err != nil {
		return "", &levigate.Error{Code: levigate.Invalid, Message: "the system does not say where your data is kept", Help: "name a folder with --workspace", Cause: err}
	}
	return filepath.Join(data, "levigate"), nil
}

// dataDir is where a system keeps a user's data.
func dataDir(system string, env func(string) string, home func() (string, error)) (string, error) {
	switch system {
	case "windows":
		if dir := env("LocalAppData"); dir != "" {
			return dir, nil
		}
		return "", errors.New("LocalAppData is not set")
	case "darwin":
		dir, err := home()
		return filepath.Join(dir, "Library", "Application Support"), err
	}
	// A path that is not absolute is to be passed over.
	if dir := env("XDG_DATA_HOME"); filepath.IsAbs(dir) {
		return dir, nil
	}
	dir, err := home()
	return filepath.Join(dir, ".local", "share"), err
}

// kept opens a workspace that is there; a command that only looks makes none.
func kept(named string) (*sqlite.Store, error) {
	dir, err := WorkspaceDir(named)
	if err != nil {
		return nil, err
	}
	if info, err := os.Stat(dir); err == nil && info.IsDir() && !sqlite.Exists(dir) || errors.Is(err, os.ErrNotExist) {
		return nil, &levigate.Error{Code: levigate.NotFound, Message: "there is no workspace in " + dir, Help: "name the folder of one with --workspace; levigate serve makes one"}
	}
	return sqlite.Open(dir)
}

// Looked is a workspace, or a backup, of which all was looked at.
type Looked struct {
	File     string
	Contents *sqlite.Contents
	Noted    bool // the hash noted earlier is that of a record
}

// VerifyWorkspace looks at all of a workspace. noted is a hash written down
// earlier, or empty.
func (p *Program) VerifyWorkspace(ctx context.Context, dir, noted string) (*Looked, error) {
	s, err := kept(dir)
	if err != nil {
		return nil, err
	}
	defer s.Close()
	c, err := s.Check(ctx)
	if err != nil {
		return nil, err
	}
	return &Looked{File: s.Path(), Contents: c, Noted: c.Chain.Holds(noted)}, nil
}

// BackupWorkspace copies a workspace into a new file, and looks at all of that.
func (p *Program) BackupWorkspace(ctx context.Context, dir, to string) (*Looked, error) {
	s, err := kept(dir)
	if err != nil {
		return nil, err
	}
	defer s.Close()
	c, err := s.Backup(ctx, to)
	if err != nil {
		return nil, err
	}
	return &Looked{File: to, Contents: c}, nil
}

// RestoreWorkspace brings a backup back. replace lets it take the place of a
// workspace that holds something; faulty lets in records edited by hand.
func (p *Program) RestoreWorkspace(ctx context.Context, dir, file string, replace, faulty bool) (l *Looked, keptAs string, err error) {
	dir, err = WorkspaceDir(dir)
	if err != nil {
		return nil, "", err
	}
	r, err := sqlite.Restore(ctx, dir, file, sqlite.Restoring{Replace: replace, Faulty: faulty, Now: p.Clock})
	if err != nil {
		return nil, "", err
	}
	return &Looked{File: filepath.Join(dir, sqlite.File), Contents: r.Contents}, r.Kept, nil
}
