package main

import (
	"errors"
	"strings"
	"testing"
)

func TestNewEnough(t *testing.T) {
	for version, want := range map[string]bool{
		"v20.19.0": true, "v20.20.2": true, "v22.1.0": true, "v100.0.0": true,
		"v20.18.9": false, "v18.20.0": false, "v9.99.0": false, "": false, "v20": false, "nightly": false,
	} {
		if newEnough(version) != want {
			t.Errorf("%q counts as new enough: %v", version, !want)
		}
	}
}

// Without Node the bench stages say so once, and say what to install; those
// after are not tried.
func TestFrontendStagesWithoutNode(t *testing.T) {
	t.Setenv("PATH", t.TempDir())
	var said []string
	for _, s := range (place{root: t.TempDir()}).frontendStages()[1:] {
		err := s.run(t.Context())
		if err == nil {
			t.Fatalf("%s passes without Node", s.name)
		}
		said = append(said, err.Error())
	}
	if _, ok := errors.AsType[errNoNode](errNoNode("x")); !ok || !strings.Contains(said[0], "install Node 20.19 or newer") {
		t.Errorf("the first says %q", said[0])
	}
	for _, s := range said[1:] {
		if !strings.HasPrefix(s, "not run") {
			t.Errorf("a later one says %q", s)
		}
	}
}
