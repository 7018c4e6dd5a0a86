// Package skeleton writes the first lines of a new file, for the tools that
// start a rule or a method.
package skeleton

import (
	"errors"
	"fmt"
	"go/build"
	"go/format"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// File is one file to be written, its path from the module's root.
type File struct {
	Path string
	Text string
}

// Root is the folder with go.mod at or above the one we run in.
func Root() (string, error) {
	dir, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir, nil
		}
		above := filepath.Dir(dir)
		if above == dir {
			return "", errors.New("no go.mod at or above the folder this runs in")
		}
		dir = above
	}
}

// Write writes the files, formatted. It refuses one that is there already, and
// a name that the Go command would pass over (_test.go, _windows.go), before it
// writes any.
func Write(root string, files ...File) error {
	formatted := make([][]byte, len(files))
	for i, f := range files {
		path := filepath.Join(root, f.Path)
		if _, err := os.Stat(path); !errors.Is(err, fs.ErrNotExist) {
			return fmt.Errorf("%s is there already", f.Path)
		}
		if err := compiled(f); err != nil {
			return err
		}
		text, err := format.Source([]byte(f.Text))
		if err != nil {
			return fmt.Errorf("%s: %w", f.Path, err)
		}
		formatted[i] = text
	}
	for i, f := range files {
		path := filepath.Join(root, f.Path)
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(path, formatted[i], 0o644); err != nil {
			return err
		}
	}
	return nil
}

// compiled refuses a file the Go command would not compile here because of its
// name. A test is meant to be one; it is let through by its own name only.
func compiled(f File) error {
	if filepath.Base(f.Path) == "methods_test.go" {
		return nil
	}
	if strings.HasSuffix(f.Path, "_test.go") {
		return fmt.Errorf("%s would be a test: choose a name that does not end in test", f.Path)
	}
	ctx := build.Default
	ctx.OpenFile = func(string) (io.ReadCloser, error) { return io.NopCloser(strings.NewReader(f.Text)), nil }
	for _, system := range []struct{ os, arch string }{{"linux", "amd64"}, {"windows", "arm64"}} {
		ctx.GOOS, ctx.GOARCH = system.os, system.arch
		if ok, err := ctx.MatchFile(filepath.Dir(f.Path), filepath.Base(f.Path)); err != nil || !ok {
			return fmt.Errorf("%s would be compiled on one system only: choose a name that does not end in a system's", f.Path)
		}
	}
	return nil
}
