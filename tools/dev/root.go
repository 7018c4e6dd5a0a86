package main

import (
	"errors"
	"os"
	"path/filepath"
)

// findRoot walks up from dir to the folder that holds go.mod, so that a command
// works from any folder of the repository.
func findRoot(dir string) (string, error) {
	dir, err := filepath.Abs(dir)
	if err != nil {
		return "", err
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir, nil
		}
		up := filepath.Dir(dir)
		if up == dir {
			return "", errors.New("no go.mod here or above: start this inside the repository")
		}
		dir = up
	}
}
