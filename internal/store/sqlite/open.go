package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"time"

	_ "modernc.org/sqlite" // the driver

	"levigate"
)

// File is a workspace's file within its folder.
const File = "workspace.db"

// readers is how many reads run at once.
const readers = 4

// Open opens the workspace in a folder, and makes both where there are none:
// the folder for its owner only, and so the file.
func Open(dir string) (*Store, error) {
	dir, err := filepath.Abs(dir)
	if err != nil {
		return nil, bad(dir, "is no folder", "name a folder of your own with --workspace", err)
	}
	if err := folder(dir); err != nil {
		return nil, err
	}
	path := filepath.Join(dir, File)
	if err := file(path); err != nil {
		return nil, err
	}
	s := &Store{Now: time.Now, path: path}
	if err := s.open(context.Background()); err != nil {
		s.Close()
		return nil, err
	}
	return s, nil
}

// Exists reports whether a folder holds a workspace.
func Exists(dir string) bool {
	_, err := os.Stat(filepath.Join(dir, File))
	return err == nil
}

func (s *Store) open(ctx context.Context) (err error) {
	own := []string{"_txlock=immediate", "_pragma=synchronous(FULL)", "_pragma=foreign_keys(1)"}
	if s.writer, err = connect(s.path, 1, own...); err == nil {
		s.reads, err = connect(s.path, readers, "_pragma=query_only(1)")
	}
	if err != nil {
		return bad(s.path, "can't be opened", "name another folder with --workspace", err)
	}
	if err := s.prepare(ctx); err != nil {
		return told(ctx, "opening the workspace "+s.path, err)
	}
	if s.opened, err = os.Stat(s.path); err != nil {
		return bad(s.path, "can't be read: "+reason(err), "look at who may read and write its folder", err)
	}
	return nil
}

// prepare makes a new file ours and brings an older one to today's shape.
func (s *Store) prepare(ctx context.Context) error {
	switch err := header(s.path); {
	case errors.Is(err, errEmpty):
		if _, err := s.writer.ExecContext(ctx, `PRAGMA application_id = `+applicationText); err != nil {
			return err
		}
	case err != nil:
		return err
	}
	var mode string
	if err := s.writer.QueryRowContext(ctx, `PRAGMA journal_mode = WAL`).Scan(&mode); err != nil {
		return err
	}
	if mode != "wal" {
		return bad(s.path, "lies where the system can't share it between readers and a writer", "keep the workspace on a disk of this machine", nil)
	}
	return migrate(ctx, s.writer, s.path)
}

// connect opens a pool on a file; every connection waits for others, and trusts
// nothing that a file's schema would call.
func connect(path string, most int, query ...string) (*sql.DB, error) {
	query = append([]string{"_pragma=busy_timeout(5000)", "_pragma=trusted_schema(0)", "_defensive=1"}, query...)
	name := (&url.URL{Scheme: "file", Path: slashed(path)}).String() + "?" + strings.Join(query, "&")
	db, err := sql.Open("sqlite", name)
	if err == nil {
		db.SetMaxOpenConns(most)
		db.SetMaxIdleConns(most)
	}
	return db, err
}

// slashed is a path as an address writes it; one with a drive gets a slash
// before it.
func slashed(path string) string {
	path = filepath.ToSlash(path)
	if !strings.HasPrefix(path, "/") {
		path = "/" + path
	}
	return path
}

func folder(dir string) error {
	err := os.MkdirAll(dir, 0o700)
	if info, e := os.Stat(dir); e == nil && !info.IsDir() {
		return bad(dir, "is a file, and a workspace is a folder", "name another with --workspace", err)
	}
	if err != nil {
		return bad(dir, "can't be made: "+reason(err), "name a folder you may write to with --workspace", err)
	}
	return nil
}

// file makes the file, or takes it from the eyes of others.
func file(path string) error {
	f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE, 0o600)
	if info, e := os.Stat(path); e == nil && !info.Mode().IsRegular() {
		if err == nil {
			f.Close()
		}
		return bad(path, "is no ordinary file", "move it away, or name another folder with --workspace", err)
	}
	if err != nil {
		return bad(path, "can't be written: "+reason(err), "look at who may write there, or name another folder with --workspace", err)
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.Mode().Perm()&0o077 != 0 {
		f.Chmod(0o600) // where the system knows no such modes, its own rules hold
	}
	return nil
}

func bad(path, what, help string, cause error) error {
	return &levigate.Error{Code: levigate.Invalid, Message: path + " " + what, Help: help, Cause: cause}
}

// reason is an error of the system without the name it was about.
func reason(err error) string {
	if e, ok := errors.AsType[*fs.PathError](err); ok {
		return e.Err.Error()
	}
	if e, ok := errors.AsType[*os.LinkError](err); ok {
		return e.Err.Error()
	}
	return err.Error()
}
