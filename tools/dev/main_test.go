package main

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// fake gives two commands that keep what they were called with.
func fake(got *[]string) []command {
	keep := func(name string) func(context.Context, place, []string) error {
		return func(_ context.Context, _ place, args []string) error {
			*got = append([]string{name}, args...)
			return nil
		}
	}
	return []command{
		{"plain", "takes nothing", "", keep("plain")},
		{"open", "passes on", "flags", keep("open")},
	}
}

func TestStartFindsTheCommand(t *testing.T) {
	for _, c := range []struct{ args, want []string }{
		{[]string{"plain"}, []string{"plain"}},
		{[]string{"open", "--addr", "127.0.0.1:0"}, []string{"open", "--addr", "127.0.0.1:0"}},
		{[]string{"open", "--help"}, []string{"open", "--help"}},
	} {
		var got []string
		if err := start(t.Context(), fake(&got), c.args, &bytes.Buffer{}, &bytes.Buffer{}); err != nil {
			t.Errorf("%q: %v", c.args, err)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%q: ran %q, want %q", c.args, got, c.want)
		}
	}
}

func TestStartRefuses(t *testing.T) {
	for _, args := range [][]string{{"plane"}, {"plain", "more"}, {""}} {
		var got []string
		err := start(t.Context(), fake(&got), args, &bytes.Buffer{}, &bytes.Buffer{})
		if _, slip := errors.AsType[usageError](err); !slip {
			t.Errorf("%q: got %v, want a usage error", args, err)
		}
		if got != nil {
			t.Errorf("%q ran %q", args, got)
		}
	}
}

func TestBareStartListsEveryCommand(t *testing.T) {
	var out bytes.Buffer
	if err := start(t.Context(), commands, nil, &out, &bytes.Buffer{}); err != nil {
		t.Fatal(err)
	}
	for _, c := range commands {
		if !strings.Contains(out.String(), "  "+c.name+" ") || !strings.Contains(out.String(), c.about) {
			t.Errorf("%s is not in the list:\n%s", c.name, out.String())
		}
	}
}

func TestMakefileKnowsEveryCommand(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "..", "Makefile"))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range commands {
		if !strings.Contains(string(text), " "+c.name) {
			t.Errorf("the Makefile has no target %s", c.name)
		}
	}
}

func TestFindRoot(t *testing.T) {
	top := t.TempDir()
	deep := filepath.Join(top, "a", "b")
	if err := os.MkdirAll(deep, 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(top, "go.mod"), []byte("module m\n"), 0o666); err != nil {
		t.Fatal(err)
	}
	if got, err := findRoot(deep); err != nil || got != top {
		t.Errorf("got %q, %v; want %q", got, err, top)
	}
}
