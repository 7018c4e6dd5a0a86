package main

import (
	"bytes"
	"errors"
	"io"
	"os"
	"path/filepath"

	"levigate"
)

// writeFile writes a file whole or not at all: into a file of its own beside it,
// which takes the name once it is complete and on the disk. What stood under the
// name stays until then.
func writeFile(path string, write func(io.Writer) error) error {
	var b bytes.Buffer
	if err := write(&b); err != nil {
		return err
	}
	mode := os.FileMode(0o644)
	switch info, err := os.Stat(path); {
	case err == nil && !info.Mode().IsRegular():
		return unwritten(path, "is no ordinary file", "name a file, not a folder or a device", nil)
	case err == nil:
		mode = info.Mode().Perm()
		// A link stays a link: the file it leads to is replaced.
		if to, err := filepath.EvalSymlinks(path); err == nil {
			path = to
		}
	}
	f, err := os.CreateTemp(filepath.Dir(path), ".levigate-*")
	if err != nil {
		return unwritten(path, "can't be written: its folder does not exist or is closed to you", "name a file in a folder you may write to", err)
	}
	defer os.Remove(f.Name()) // gone already when all went well
	_, err = f.Write(b.Bytes())
	if err == nil {
		err = f.Chmod(mode)
	}
	if err == nil {
		err = f.Sync()
	}
	if closed := f.Close(); err == nil {
		err = closed
	}
	if err == nil {
		err = os.Rename(f.Name(), path)
	}
	if err != nil {
		return unwritten(path, "can't be written: "+reason(err), "nothing was changed; look at the room on the disk and at who may write there", err)
	}
	return nil
}

// reason is an error of the system without the names it was about: one of them
// is a file the person never heard of.
func reason(err error) string {
	if e, ok := errors.AsType[*os.PathError](err); ok {
		return e.Err.Error()
	}
	if e, ok := errors.AsType[*os.LinkError](err); ok {
		return e.Err.Error()
	}
	return err.Error()
}

func unwritten(path, what, help string, cause error) error {
	return &levigate.Error{Code: levigate.Invalid, Message: path + " " + what, Help: help, Cause: cause}
}

// sameFile reports whether two names are one file.
func sameFile(a, b string) bool {
	x, err := os.Stat(a)
	if err != nil {
		return false
	}
	y, err := os.Stat(b)
	return err == nil && os.SameFile(x, y)
}
