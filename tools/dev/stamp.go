package main

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// A stamp keeps, beside what was made, a hash of what it was made from. It lies
// in the folder that npm and Vite empty before they begin, so that work that
// was cut short leaves none.

// hashOf hashes names and contents of the files of dir that names give; a
// folder stands for all below it, tests and hidden files apart. first goes in
// before them. A name that is not there counts as empty.
func hashOf(dir, first string, names ...string) (string, error) {
	sum := sha256.New()
	fmt.Fprintf(sum, "%s\n", first)
	for _, name := range names {
		err := filepath.WalkDir(filepath.Join(dir, name), func(path string, d fs.DirEntry, err error) error {
			if os.IsNotExist(err) {
				return nil
			}
			if err != nil || d.IsDir() || strings.HasPrefix(d.Name(), ".") || strings.Contains(d.Name(), ".test.") {
				return err
			}
			body, err := os.ReadFile(path)
			if err != nil {
				return err
			}
			rel, err := filepath.Rel(dir, path)
			fmt.Fprintf(sum, "%s %d\n", filepath.ToSlash(rel), len(body))
			sum.Write(body)
			return err
		})
		if err != nil {
			return "", err
		}
	}
	return hex.EncodeToString(sum.Sum(nil)), nil
}

// stamped says whether the stamp at path holds hash.
func stamped(path, hash string) bool {
	have, err := os.ReadFile(path)
	return err == nil && strings.TrimSpace(string(have)) == hash
}

func stamp(path, hash string) error {
	return os.WriteFile(path, []byte(hash+"\n"), 0o666)
}
