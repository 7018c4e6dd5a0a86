package main

import (
	"io"
	"os"
	"os/exec"
	"strings"
	"testing"
)

func TestFindChromium(t *testing.T) {
	only := func(names ...string) func(string) (string, error) {
		return func(name string) (string, error) {
			for _, n := range names {
				if n == name {
					return "/found/" + name, nil
				}
			}
			return "", exec.ErrNotFound
		}
	}
	t.Setenv(chromiumVar, "")
	if at, ok := findChromium(only("google-chrome", "chromium")); !ok || at != "/found/chromium" {
		t.Errorf("took %q", at)
	}
	if at, ok := findChromium(only("google-chrome")); !ok || at != "/found/google-chrome" {
		t.Errorf("took %q", at)
	}
	if at, ok := findChromium(only()); ok {
		t.Errorf("took %q, and there is none", at)
	}
	t.Setenv(chromiumVar, "mine")
	if at, _ := findChromium(only("mine", "chromium")); at != "/found/mine" {
		t.Errorf("took %q for the one named", at)
	}
}

// A run without a browser fails, with what to do; it never passes in silence.
func TestNoChromiumFails(t *testing.T) {
	t.Setenv(chromiumVar, "")
	t.Setenv("PATH", t.TempDir())
	p := place{root: t.TempDir(), out: io.Discard, log: io.Discard}
	for _, at := range browsers {
		if _, err := os.Stat(at); err == nil {
			t.Skipf("%s is here, whatever the path says", at)
		}
	}
	stages := p.browserStages()
	if err := stages[0].run(t.Context()); err == nil || !strings.Contains(err.Error(), "apt-get install chromium") {
		t.Errorf("without a browser: %v", err)
	}
	if err := stages[1].run(t.Context()); err == nil {
		t.Error("the browser tests pass without a browser")
	}
}
