package memory

import (
	"context"
	"maps"
	"testing"

	"levigate"
)

func set(id, from, to string) *levigate.Command {
	return &levigate.Command{ID: id, Draft: "d", Changes: []levigate.Change{{Do: levigate.Set, List: "head", Field: "name", From: from, To: to}}}
}

func TestUndoAndRedo(t *testing.T) {
	ctx, s := context.Background(), New()
	if err := s.CreateDraft(ctx, &levigate.Draft{ID: "d"}); err != nil {
		t.Fatal(err)
	}
	name := func() string { d, _ := s.Draft(ctx, "d"); return d.Document.Head["name"] }
	for i, c := range []*levigate.Command{set("1", "", "a"), set("2", "a", "b"), set("3", "b", "c")} {
		if a, err := s.Apply(ctx, c); err != nil || a.Revision != int64(i+1) || a.Again {
			t.Fatal(a, err)
		}
	}
	step := func(f func(context.Context, string, string, string) (*levigate.Applied, error), id, want string, nothing bool) {
		t.Helper()
		a, err := f(ctx, "d", id, "")
		if err != nil || (a == nil) != nothing || name() != want {
			t.Fatalf("%s: %v, %v, now %q, want %q", id, a, err, name(), want)
		}
	}
	step(s.Undo, "u1", "b", false)
	step(s.Undo, "u1", "b", false) // sent again
	step(s.Undo, "u2", "a", false)
	step(s.Redo, "r1", "b", false)
	step(s.Undo, "u3", "a", false)
	step(s.Redo, "r2", "b", false)
	step(s.Redo, "r3", "c", false)
	step(s.Redo, "r4", "c", true)
	step(s.Undo, "u4", "b", false)
	if _, err := s.Apply(ctx, set("4", "b", "z")); err != nil {
		t.Fatal(err)
	}
	step(s.Redo, "r5", "z", true) // something else was done since
	for _, want := range []string{"b", "a", ""} {
		step(s.Undo, "u-"+want, want, false)
	}
	step(s.Undo, "u9", "", true)
	if _, err := s.Apply(ctx, set("5", "old", "new")); levigate.CodeOf(err) != levigate.Conflict {
		t.Errorf("a clash gave %v", err)
	}
}

func TestChain(t *testing.T) {
	ctx, s := context.Background(), New()
	for _, id := range []string{"a", "b", "c"} {
		if err := s.AddRecord(ctx, &levigate.Record{ID: id, Body: []byte(id)}); err != nil {
			t.Fatal(err)
		}
	}
	if f, err := s.Verify(ctx); len(f) > 0 || err != nil {
		t.Fatal(f, err)
	}
	s.records[1].Body = []byte("z")
	if f, _ := s.Verify(ctx); len(f) != 1 || f[0].Record != "b" {
		t.Errorf("an edit: %v", f)
	}
	s.records = append(s.records[:1], s.records[2:]...)
	if f, _ := s.Verify(ctx); len(f) != 1 || f[0].Record != "c" {
		t.Errorf("a gap: %v", f)
	}
}

// What was handed out is not what is kept.
func TestNothingIsShared(t *testing.T) {
	ctx, s := context.Background(), New()
	head := map[string]string{"name": "Öl"}
	if err := s.CreateDraft(ctx, &levigate.Draft{ID: "d", Document: levigate.Document{Head: head}}); err != nil {
		t.Fatal(err)
	}
	before, _ := s.Draft(ctx, "d")
	was := maps.Clone(before.Document.Head)
	head["name"] = "changed"
	if _, err := s.Apply(ctx, set("1", "Öl", "b")); err != nil {
		t.Fatal(err)
	}
	if !maps.Equal(was, before.Document.Head) {
		t.Error("a draft handed out was written to")
	}
	if list, err := s.ListDrafts(ctx, "B", 9); err != nil || len(list) != 1 {
		t.Error(list, err)
	}
}
