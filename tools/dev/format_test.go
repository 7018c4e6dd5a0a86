package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

func TestUnformatted(t *testing.T) {
	dir := t.TempDir()
	for name, text := range map[string]string{
		"good.go":           "package a\n",
		"b/wide.go":         "package  b\n",
		"b/broken.go":       "package\n",
		"b/notes.txt":       "package  b\n",
		".hidden/x.go":      "package  x\n",
		"node_modules/x.go": "package  x\n",
	} {
		path := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	got, err := unformatted(dir)
	if err != nil {
		t.Fatal(err)
	}
	for i := range got {
		got[i], _, _ = strings.Cut(filepath.ToSlash(got[i]), " ")
	}
	if want := []string{"b/broken.go", "b/wide.go"}; !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}
