package main

import (
	"bytes"
	"fmt"
	"go/format"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// unformatted lists the Go files below root that gofmt would change, committed
// or not. It calls the formatter as a library, so neither gofmt nor git has to
// be on the path.
func unformatted(root string) ([]string, error) {
	var files []string
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir():
			hidden := strings.HasPrefix(d.Name(), ".") || d.Name() == "node_modules"
			if hidden && path != root {
				return filepath.SkipDir
			}
			return nil
		case !strings.HasSuffix(path, ".go"):
			return nil
		}
		have, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(root, path)
		if err != nil {
			return err
		}
		want, err := format.Source(have)
		if err != nil {
			files = append(files, fmt.Sprintf("%s (%v)", rel, err))
		} else if !bytes.Equal(have, want) {
			files = append(files, rel)
		}
		return nil
	})
	return files, err
}
