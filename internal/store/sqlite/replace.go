package sqlite

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"time"

	sqlite3 "modernc.org/sqlite/lib"

	"levigate"
)

// Restoring says how a backup is brought back.
type Restoring struct {
	// Replace takes the place of a workspace that holds something. The old file
	// is kept beside the new one.
	Replace bool
	// Faulty takes a backup in whose chain of records something was edited.
	Faulty bool
	Now    func() time.Time
}

// Restored is what came of it.
type Restored struct {
	Contents *Contents
	Kept     string // the old file, where there was one
}

// Restore brings a backup back into a folder. The file may come from anyone: a
// copy of it is looked at from the outside in, then written anew row by row, and
// only that new file becomes the workspace.
func Restore(ctx context.Context, dir, file string, how Restoring) (*Restored, error) {
	dir, err := filepath.Abs(dir)
	if err != nil {
		return nil, bad(dir, "is no folder", "name a folder of your own with --workspace", err)
	}
	if err := complete(file); err != nil {
		return nil, err
	}
	if err := folder(dir); err != nil {
		return nil, err
	}
	path := filepath.Join(dir, File)
	if err := mayReplace(ctx, path, file, how); err != nil {
		return nil, err
	}
	fresh, c, err := checkedCopy(ctx, path, file)
	if err != nil {
		return nil, err
	}
	defer os.Remove(fresh) // gone already when all went well
	if len(c.Faults) > 0 && !how.Faulty {
		return nil, refused(levigate.Conflict, "look for an older backup; --accept-faults brings this one back as it is",
			"%s holds records that were changed after they were made (%d; the first: %s %s). Nothing was replaced", file, len(c.Faults), c.Faults[0].Record, c.Faults[0].Text)
	}
	kept, err := swap(ctx, path, fresh, how.Now())
	if err != nil {
		return nil, err
	}
	return &Restored{Contents: c, Kept: kept}, nil
}

// complete refuses a file that is only part of an open workspace.
func complete(file string) error {
	if info, err := os.Stat(file); err != nil {
		return refused(levigate.NotFound, "name a file that levigate backup made", "%s can't be read: %s", file, reason(err))
	} else if !info.Mode().IsRegular() {
		return bad(file, "is no ordinary file", "name a file that levigate backup made", nil)
	}
	for _, ending := range []string{"-wal", "-journal"} {
		if info, err := os.Stat(file + ending); err == nil && info.Size() > 0 {
			return bad(file, "belongs to an open workspace, and its last edits are in "+filepath.Base(file)+ending, "make a copy with levigate backup, and restore that", nil)
		}
	}
	return nil
}

// mayReplace refuses to take the place of a workspace unasked, or of one that is
// in use.
func mayReplace(ctx context.Context, path, file string, how Restoring) error {
	old, err := os.Stat(path)
	if errors.Is(err, os.ErrNotExist) {
		return nil
	}
	if err != nil {
		return bad(path, "can't be read: "+reason(err), "look at who may read it", err)
	}
	if from, err := os.Stat(file); err == nil && os.SameFile(old, from) {
		return bad(file, "is the workspace itself", "name a file that levigate backup made", nil)
	}
	if !old.Mode().IsRegular() {
		return bad(path, "is no ordinary file", "move it away", nil)
	}
	if how.Replace || old.Size() == 0 {
		return nil
	}
	what, err := holds(ctx, path)
	if err != nil {
		what = "what can't be read"
	}
	if what == "" {
		return nil
	}
	return refused(levigate.Conflict, "add --replace; the old file is then kept beside the new one", "the workspace %s holds %s", path, what)
}

// holds says what a workspace holds; empty for nothing.
func holds(ctx context.Context, path string) (string, error) {
	if err := header(path); err != nil {
		return "", err
	}
	db, err := connect(path, 1, "_pragma=query_only(1)")
	if err != nil {
		return "", err
	}
	defer db.Close()
	var drafts, versions, records int
	err = db.QueryRowContext(ctx, `SELECT (SELECT count(*) FROM drafts), (SELECT count(*) FROM versions), (SELECT count(*) FROM records)`).Scan(&drafts, &versions, &records)
	if err != nil || drafts+versions+records == 0 {
		return "", err
	}
	return fmt.Sprintf("formulas (%d), versions (%d), records (%d)", drafts, versions, records), nil
}

// checkedCopy copies a file, looks at the copy, and writes what it holds into a
// fresh file beside the workspace.
func checkedCopy(ctx context.Context, path, file string) (fresh string, c *Contents, err error) {
	raw, err := beside(path)
	if err != nil {
		return "", nil, err
	}
	defer os.Remove(raw)
	if err := copied(file, raw); err != nil {
		return "", nil, bad(file, "can't be copied: "+reason(err), "look at the room on the disk and at who may read the file", err)
	}
	if c, err = examine(ctx, raw, file); err != nil {
		return "", nil, err
	}
	if fresh, err = beside(path); err != nil {
		return "", nil, err
	}
	err = rewritten(ctx, raw, fresh)
	if err == nil {
		err = synced(fresh)
	}
	if err == nil {
		_, err = examine(ctx, fresh, file)
	}
	if err != nil {
		os.Remove(fresh)
		return "", nil, told(ctx, "writing the workspace anew", err)
	}
	return fresh, c, nil
}

func copied(from, to string) error {
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer in.Close()
	out, err := os.OpenFile(to, os.O_WRONLY|os.O_TRUNC, 0)
	if err != nil {
		return err
	}
	_, err = io.Copy(out, in)
	return errors.Join(err, out.Close())
}

func rewritten(ctx context.Context, from, to string) error {
	db, err := connect(from, 1, "mode=ro", "immutable=1")
	if err != nil {
		return err
	}
	defer db.Close()
	_, err = db.ExecContext(ctx, `VACUUM INTO $1`, to)
	return err
}

// swap puts the fresh file in the workspace's place. The old one gets a second
// name first, so that at no moment there is none.
func swap(ctx context.Context, path, fresh string, now time.Time) (kept string, err error) {
	if info, err := os.Stat(path); err == nil && info.Size() > 0 {
		if err := letGo(ctx, path); err != nil {
			return "", err
		}
		kept = filepath.Join(filepath.Dir(path), "workspace-before-"+now.UTC().Format("20060102-150405.000")+".db")
		if err := keep(path, kept); err != nil {
			return "", bad(kept, "can't be written: "+reason(err), "nothing was replaced; look at the room on the disk", err)
		}
	}
	// What the old file had not taken in yet must not meet the new one.
	for _, ending := range []string{"-wal", "-shm", "-journal"} {
		if _, err := os.Stat(path + ending); err != nil {
			continue
		}
		if kept == "" || ending == "-shm" {
			err = os.Remove(path + ending)
		} else {
			err = os.Rename(path+ending, kept+ending)
		}
		if err != nil {
			return "", bad(path+ending, "can't be moved away: "+reason(err), "nothing was replaced; end every program that uses the workspace", err)
		}
	}
	if err := os.Rename(fresh, path); err != nil {
		return "", bad(path, "can't be replaced: "+reason(err), "end every program that uses the workspace", err)
	}
	syncFolder(filepath.Dir(path))
	return kept, nil
}

// letGo takes into the old file what is still beside it, and finds out whether
// another program has it open. A file that can't be opened stays as it is.
func letGo(ctx context.Context, path string) error {
	if header(path) != nil {
		return nil
	}
	db, err := connect(path, 1, "_pragma=busy_timeout(500)")
	if err != nil {
		return nil
	}
	defer db.Close()
	var mode string
	err = db.QueryRowContext(ctx, `PRAGMA journal_mode = DELETE`).Scan(&mode)
	if codeOf(err) == sqlite3.SQLITE_BUSY || err == nil && mode != "delete" {
		return refused(levigate.Conflict, "end levigate serve, then do it again", "the workspace %s is open in another program", path)
	}
	return ctx.Err()
}

// keep gives a file a second name; a copy where the disk knows no such thing.
func keep(path, kept string) error {
	if os.Link(path, kept) == nil {
		return nil
	}
	f, err := os.OpenFile(kept, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	if err := f.Close(); err != nil {
		return err
	}
	if err := copied(path, kept); err != nil {
		return errors.Join(err, os.Remove(kept))
	}
	return synced(kept)
}
