package formulafile

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"levigate"
)

func TestReadFile(t *testing.T) {
	f, problems, err := ReadFile("testdata/good/minimal.yaml")
	if f == nil || f.Code != "M-1" || problems != nil || err != nil {
		t.Errorf("%v, %v, %v", f, problems, err)
	}
	f, problems, err = ReadFile("testdata/bad/empty.yaml")
	if f != nil || len(problems) != 1 || err != nil {
		t.Errorf("%v, %v, %v", f, problems, err)
	}
}

// A file of 50 MB is refused, and only as much of it read as tells.
func TestLargeFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "large.yaml")
	if err := os.WriteFile(path, []byte("levigate: formula/1\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Truncate(path, 50<<20); err != nil {
		t.Fatal(err)
	}
	_, problems, err := ReadFile(path)
	const want = "large.yaml:1:1: the file is larger than 1024 KiB\n  help: a formula takes a few kilobytes, at most 1024 KiB are read; is this the right file?\n"
	if got := Format(problems, "large.yaml"); err != nil || got != want {
		t.Errorf("%v, got\n%s", err, got)
	}
	c := &counter{}
	if data, err := load(c, MaxBytes); len(data) != MaxBytes+1 || err != nil || c.n > 2*MaxBytes {
		t.Errorf("%d bytes, %v, %d taken", len(data), err, c.n)
	}
}

// counter never ends and counts what was asked of it.
type counter struct{ n int }

func (c *counter) Read(p []byte) (int, error) {
	c.n += len(p)
	return len(p), nil
}

var _ io.Reader = (*counter)(nil)

func TestUnreadable(t *testing.T) {
	dir := t.TempDir()
	locked := filepath.Join(dir, "locked.yaml")
	if err := os.WriteFile(locked, nil, 0); err != nil {
		t.Fatal(err)
	}
	cases := []struct {
		path, what string
		code       levigate.Code
	}{
		{dir, " is a folder", levigate.Invalid},
		{filepath.Join(dir, "none.yaml"), " does not exist", levigate.NotFound},
		{os.DevNull, " is a device or a pipe, not a file", levigate.Invalid},
	}
	// Root may read anything.
	if os.Geteuid() > 0 {
		cases = append(cases, struct {
			path, what string
			code       levigate.Code
		}{locked, " may not be read by you", levigate.Invalid})
	}
	for _, c := range cases {
		_, problems, err := ReadFile(c.path)
		var e *levigate.Error
		if !errors.As(err, &e) || problems != nil || e.Code != c.code || e.Message != c.path+c.what || e.Help == "" {
			t.Errorf("%s: %v, %v", c.path, err, problems)
		}
	}
	for _, cause := range []error{fs.ErrPermission, io.ErrUnexpectedEOF} {
		if err := unopened("a.yaml", cause); !errors.Is(err, cause) || !strings.HasPrefix(err.Error(), "a.yaml ") {
			t.Error(err)
		}
	}
}

func TestFormat(t *testing.T) {
	got := Format([]levigate.Problem{
		{Place: levigate.Place{Line: 3, Column: 7}, Text: "what", Help: "do this"},
		{Text: "no place\x1b[2J"},
	}, "a\nb.yaml")
	const want = "a\uFFFDb.yaml:3:7: what\n  help: do this\na\uFFFDb.yaml:1:1: no place\uFFFD[2J\n"
	if got != want {
		t.Errorf("got %q", got)
	}
}
