package program

import (
	"context"
	"testing"

	"levigate"
	"levigate/internal/store/sqlite/sqlitetest"
)

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
	kept := sqlitetest.Open(t)
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
