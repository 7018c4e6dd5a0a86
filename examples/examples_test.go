package examples

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// levigate is the program, built once for these tests.
var levigate string

func TestMain(m *testing.M) {
	flag.Parse()
	os.Exit(func() int {
		dir, err := os.MkdirTemp("", "levigate")
		if err != nil {
			fmt.Fprintln(os.Stderr, err)
			return 1
		}
		defer os.RemoveAll(dir)
		levigate = filepath.Join(dir, "levigate")
		if runtime.GOOS == "windows" {
			levigate += ".exe"
		}
		if out, err := exec.Command("go", "build", "-o", levigate, "../cmd/levigate").CombinedOutput(); err != nil {
			fmt.Fprintf(os.Stderr, "go build: %v\n%s", err, out)
			return 1
		}
		return m.Run()
	}())
}

// noteSources looks at every file the program is built from. A test's outcome is
// kept and used again while what it looked at is unchanged, and a program built
// by a command of its own is nothing the go command knows of. It has to look
// from within a test: what TestMain does before that is not counted.
var noteSources = sync.OnceValue(func() error {
	root := ".."
	return filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && path != root && strings.HasPrefix(d.Name(), ".") && path != "..":
			return filepath.SkipDir
		case slices.Contains([]string{".go", ".tsv", ".css", ".html"}, filepath.Ext(path)):
			_, err = os.Stat(path)
		}
		return err
	})
})

// run runs the program and gives what it printed and its exit status.
func run(t *testing.T, args ...string) ([]byte, int) {
	t.Helper()
	if err := noteSources(); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(levigate, args...)
	var errs bytes.Buffer
	cmd.Stderr = &errs
	out, err := cmd.Output()
	if exit, ok := errors.AsType[*exec.ExitError](err); ok {
		if exit.ExitCode() > 1 {
			t.Fatalf("%v: %s", args, errs.String())
		}
		return out, exit.ExitCode()
	}
	if err != nil {
		t.Fatal(err)
	}
	return out, 0
}

// What the program says about each made-up product, whole. These are pinned:
// they show what moved and vouch for nothing. After a change that was meant:
// go test ./examples -update, and read the difference.
func TestGolden(t *testing.T) {
	names, err := filepath.Glob("*.formula.yaml")
	if err != nil || len(names) < 5 {
		t.Fatal(names, err)
	}
	for _, name := range names {
		code := strings.TrimSuffix(name, ".formula.yaml")
		t.Run(code, func(t *testing.T) {
			got, _ := run(t, "assess", name)
			path := filepath.Join("golden", code+".txt")
			if *update {
				if err := os.WriteFile(path, got, 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			for i, line := range strings.Split(string(got), "\n") {
				if old := lineOf(string(want), i); line != old {
					t.Fatalf("%s:%d says\n  %s\nnow\n  %s", path, i+1, old, line)
				}
			}
			if len(got) != len(want) {
				t.Errorf("%s is %d bytes, now %d", path, len(want), len(got))
			}
		})
	}
}

func lineOf(text string, i int) string {
	lines := strings.Split(text, "\n")
	if i < len(lines) {
		return lines[i]
	}
	return ""
}

// Only the product that is broken on purpose has something to settle before
// release.
func TestOnlyTheBrokenOneStops(t *testing.T) {
	names, _ := filepath.Glob("*.formula.yaml")
	for _, name := range names {
		want := 0
		if strings.HasPrefix(name, "NG-") {
			want = 1
		}
		if _, status := run(t, "assess", name); status != want {
			t.Errorf("%s: status %d, want %d", name, status, want)
		}
	}
}
