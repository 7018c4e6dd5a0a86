package main

import (
	"os"
	"path/filepath"
	"testing"
)

func write(t *testing.T, dir, name, text string) {
	t.Helper()
	path := filepath.Join(dir, filepath.FromSlash(name))
	if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
}

func TestHashFollowsTheSources(t *testing.T) {
	dir := t.TempDir()
	hash := func(first string) string {
		t.Helper()
		h, err := hashOf(dir, first, "lock.json", "src")
		if err != nil {
			t.Fatal(err)
		}
		return h
	}
	seen := map[string]string{}
	moves := func(what, h string) {
		t.Helper()
		if was, ok := seen[h]; ok {
			t.Errorf("%s gives the hash of %s", what, was)
		}
		seen[h] = what
	}
	moves("nothing there", hash("v20"))
	write(t, dir, "src/a.ts", "1")
	moves("a file", hash("v20"))
	write(t, dir, "src/deep/b.ts", "2")
	moves("a deeper file", hash("v20"))
	write(t, dir, "src/a.ts", "12")
	moves("another text", hash("v20"))
	write(t, dir, "lock.json", "{}")
	moves("the lock", hash("v20"))
	moves("another Node", hash("v22"))
	kept := hash("v20")
	write(t, dir, "src/a.test.ts", "a test is not in the bundle")
	write(t, dir, "src/.swp", "nor is an editor's file")
	write(t, dir, "else.ts", "nor what nobody named")
	if hash("v20") != kept {
		t.Error("the hash moved with files that are not in the bundle")
	}
	if err := os.Rename(filepath.Join(dir, "src", "a.ts"), filepath.Join(dir, "src", "c.ts")); err != nil {
		t.Fatal(err)
	}
	moves("another name", hash("v20"))
}

func TestStamp(t *testing.T) {
	at := filepath.Join(t.TempDir(), ".stamp")
	if stamped(at, "") || stamped(at, "x") {
		t.Error("no stamp counts as one")
	}
	if err := stamp(at, "x"); err != nil {
		t.Fatal(err)
	}
	if !stamped(at, "x") || stamped(at, "y") {
		t.Error("the stamp is not that of x alone")
	}
}
