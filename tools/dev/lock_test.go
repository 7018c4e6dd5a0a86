package main

import (
	"path/filepath"
	"strings"
	"testing"
)

func TestLockOfTheBenchIsOpen(t *testing.T) {
	if err := lockIsOpen(filepath.Join("..", "..", "ui", "bench", "package-lock.json")); err != nil {
		t.Error(err)
	}
}

func TestLockHosts(t *testing.T) {
	for lock, want := range map[string]int{
		`{"node_modules/a":{"version":"1.0.0","integrity":"sha512-x"}}`:                0,
		`"funding": { "url": "https://pay.invalid/a" }, "license": "MIT"`:              0,
		`"funding": [ "https://a.invalid", { "url": "https://b.invalid" } ], "x": "1"`: 0,
		`"resolved": "https://registry.invalid/a/-/a-1.0.0.tgz"`:                       2,
		`"version": "https://elsewhere.invalid/a.tgz"`:                                 1,
		`"dependencies": { "a": "git+ssh://git@host.invalid/a.git" }`:                  1,
		`"version": "file:../a"`: 1,
		`"funding": "https://pay.invalid", "resolved": "http://registry.invalid:4873/a.tgz"`: 2,
	} {
		if got := lockHosts(lock); len(got) != want {
			t.Errorf("%s: found %s, want %d", lock, strings.Join(got, " and "), want)
		}
	}
}
