package program

import (
	"context"
	"errors"
	"path/filepath"
	"testing"

	"levigate"
	"levigate/internal/store/memory"
)

func TestWhereTheWorkspaceIs(t *testing.T) {
	home := func() (string, error) { return filepath.FromSlash("/home/ida"), nil }
	for _, c := range []struct{ system, key, value, want string }{
		{"linux", "", "", "/home/ida/.local/share/levigate"},
		{"linux", "XDG_DATA_HOME", "/data", "/data/levigate"},
		{"linux", "XDG_DATA_HOME", "relative", "/home/ida/.local/share/levigate"},
		{"darwin", "XDG_DATA_HOME", "/data", "/home/ida/Library/Application Support/levigate"},
		{"windows", "LocalAppData", "/local", "/local/levigate"},
		{"windows", "", "", "/home/ida/AppData/Local/levigate"},
	} {
		env := func(key string) string {
			if key == c.key {
				return filepath.FromSlash(c.value)
			}
			return ""
		}
		if got, err := workspaceOf(c.system, env, home); err != nil || got != filepath.FromSlash(c.want) {
			t.Errorf("%s with %s=%s: %s, %v", c.system, c.key, c.value, got, err)
		}
	}
	nowhere := func() (string, error) { return "", errors.New("no home") }
	if _, err := workspaceOf("linux", func(string) string { return "" }, nowhere); helpOf(err) == "" {
		t.Errorf("without a home: %v", err)
	}
}

// A fresh workspace holds the demo formulas; one that is there is left as it is.
func TestDemoDraftsComeOnce(t *testing.T) {
	ctx := context.Background()
	p := New()
	p.Workspace = t.TempDir()
	if err := p.Open(ctx); err != nil {
		t.Fatal(err)
	}
	list, err := p.bench.Drafts(ctx, "", 100)
	if err != nil || len(list.Drafts) != 12 {
		t.Fatal(len(list.Drafts), err)
	}
	for _, d := range list.Drafts {
		o, err := p.bench.Draft(ctx, d.ID)
		if err != nil || len(o.Check.Problems) > 0 || o.Check.Total != "100.00" {
			t.Errorf("%s: %v %+v", d.ID, err, o.Check.Problems)
		}
	}
	kept := memory.New()
	q := New()
	q.OpenStore = func(context.Context, string) (levigate.Store, bool, error) { return kept, false, nil }
	if err := q.Open(ctx); err != nil {
		t.Fatal(err)
	}
	if list, err := q.bench.Drafts(ctx, "", 100); err != nil || len(list.Drafts) != 0 {
		t.Errorf("drafts came back: %d, %v", len(list.Drafts), err)
	}
	q = New()
	q.OpenStore = func(context.Context, string) (levigate.Store, bool, error) {
		return nil, false, &levigate.Error{Code: levigate.Invalid, Message: "locked"}
	}
	if err := q.Open(ctx); err == nil {
		t.Error("a workspace that cannot be opened was opened")
	}
}

// A name that means nothing is looked for once, and never hides one that does.
func TestUnknownNamesAreRemembered(t *testing.T) {
	r := &remembering{Library: New().Library}
	a, b := r.Find("Glycerinne", nil), r.Find("Glycerinne", nil)
	if a.Material != nil || len(a.Nearest) == 0 || len(r.misses) != 1 || &a.Nearest[0] != &b.Nearest[0] {
		t.Errorf("%v %v", a, r.misses)
	}
	own := []*levigate.Material{{Name: "Glycerinne"}}
	if m := r.Find("Glycerinne", own); m.Material != own[0] {
		t.Error("what was not known hides a formula's own")
	}
}
