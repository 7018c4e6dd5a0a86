package sqlite

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// Backup writes a copy of the workspace into a new file while others go on
// working, then opens the copy and looks at all of it. What stands under the
// name already is never touched.
func (s *Store) Backup(ctx context.Context, to string) (*Contents, error) {
	f, err := os.OpenFile(to, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if errors.Is(err, fs.ErrExist) {
		return nil, bad(to, "is there already, and a backup overwrites nothing", "name a new file", err)
	}
	if err != nil {
		return nil, bad(to, "can't be written: "+reason(err), "name a file in a folder you may write to", err)
	}
	f.Close()
	c, err := s.backup(ctx, to)
	if err != nil {
		os.Remove(to) // the name was taken only for this
		return nil, err
	}
	return c, nil
}

func (s *Store) backup(ctx context.Context, to string) (*Contents, error) {
	temp, err := beside(to)
	if err != nil {
		return nil, err
	}
	defer os.Remove(temp) // gone already when all went well
	// The readers may write nothing, not even a copy.
	db, err := connect(s.path, 1, "mode=ro")
	if err == nil {
		_, err = db.ExecContext(ctx, `VACUUM INTO $1`, temp)
		err = errors.Join(err, db.Close())
	}
	if err != nil {
		return nil, told(ctx, "copying the workspace", err)
	}
	if err := synced(temp); err != nil {
		return nil, bad(to, "can't be written: "+reason(err), "look at the room on the disk", err)
	}
	c, err := examine(ctx, temp, to)
	if err != nil {
		return nil, err
	}
	if err := os.Rename(temp, to); err != nil {
		return nil, bad(to, "can't be written: "+reason(err), "name a file in a folder you may write to", err)
	}
	syncFolder(filepath.Dir(to))
	return c, nil
}

// beside makes an empty file of a name of its own in the same folder, for its
// owner only.
func beside(path string) (string, error) {
	f, err := os.CreateTemp(filepath.Dir(path), ".levigate-*.db")
	if err != nil {
		return "", bad(filepath.Dir(path), "can't be written to: "+reason(err), "name a folder you may write to", err)
	}
	return f.Name(), f.Close()
}

// synced puts a file on the disk for good.
func synced(path string) error {
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return err
	}
	return errors.Join(f.Sync(), f.Close())
}

// syncFolder puts a change of names on the disk, where the system can.
func syncFolder(dir string) {
	if f, err := os.Open(dir); err == nil {
		f.Sync()
		f.Close()
	}
}
