// Package storetest proves a store: whatever keeps a workspace has to pass Run.
package storetest

import (
	"context"
	"fmt"
	"reflect"
	"slices"
	"testing"

	"levigate"
)

// Run proves a store. open gives the one that belongs to a test: an empty one
// the first time, and the same one again when it was closed and is opened within
// the same test.
func Run(t *testing.T, open func(t *testing.T) levigate.Store) {
	for _, c := range []struct {
		name string
		run  func(b *bench)
	}{
		{"create", create}, {"list", list}, {"delete", deleted},
		{"apply", apply}, {"resend", resend}, {"clash", clash}, {"refuse", refuse}, {"commands after", commandsAfter},
		{"undo", undo}, {"redo ends", redoEnds}, {"undo across a reopen", undoReopened}, {"undo a paste", undoPaste}, {"undo walks", undoWalks},
		{"many cells at once", manyCells}, {"one cell at once", oneCell}, {"one id at once", oneID}, {"called off", calledOff},
		{"versions", versions}, {"records", records}, {"records at once", recordsAtOnce},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := &bench{T: t, ctx: t.Context(), open: open}
			b.Store = open(t)
			defer func() { b.Store.Close() }()
			c.run(b)
		})
	}
}

// bench is a store under test, with the short words the tests are written in.
type bench struct {
	*testing.T
	levigate.Store
	ctx  context.Context
	open func(*testing.T) levigate.Store
	n    int
}

func (b *bench) reopen() {
	b.Helper()
	b.must(b.Close())
	b.Store = b.open(b.T)
}

func (b *bench) must(err error) {
	b.Helper()
	if err != nil {
		b.Fatal(err)
	}
}

func (b *bench) code(err error, want levigate.Code) {
	b.Helper()
	if err == nil || levigate.CodeOf(err) != want {
		b.Fatalf("got %v, want the code %s", err, want)
	}
}

// polish is a small formula.
func polish() levigate.Document {
	row := func(id, material, percent string) levigate.Row {
		return levigate.Row{ID: id, Cells: map[string]string{"phase": "A", "material": material, "percent": percent}}
	}
	return levigate.Document{
		Head:   map[string]string{"code": "HP-03", "name": "Walnut hand polish", "product": "hand-wash"},
		Lines:  []levigate.Row{row("a", "Glycerin", "26"), row("b", "Aqua", "2"), row("c", "Sunflower oil <refined> & \u2028", "qs")},
		Making: []levigate.Row{{ID: "s", Cells: map[string]string{"text": "stir"}}},
		Own:    "- name: Ash\n",
	}
}

func (b *bench) draft(id string) *levigate.Draft {
	b.Helper()
	d := &levigate.Draft{ID: id, Document: polish()}
	b.must(b.CreateDraft(b.ctx, d))
	return d
}

func (b *bench) read(id string) *levigate.Draft {
	b.Helper()
	d, err := b.Draft(b.ctx, id)
	b.must(err)
	return d
}

// edit applies changes under a new id.
func (b *bench) edit(draft string, changes ...levigate.Change) *levigate.Applied {
	b.Helper()
	b.n++
	a, err := b.Apply(b.ctx, &levigate.Command{ID: fmt.Sprintf("edit-%d", b.n), Draft: draft, Base: b.read(draft).Revision,
		Label: fmt.Sprintf("edit %d", b.n), By: "Mara", Changes: changes})
	b.must(err)
	return a
}

func set(row, from, to string) levigate.Change {
	return levigate.Change{Do: levigate.Set, List: "lines", Row: row, Field: "percent", From: from, To: to}
}

func name(from, to string) levigate.Change {
	return levigate.Change{Do: levigate.Set, List: "head", Field: "name", From: from, To: to}
}

func (b *bench) same(got, want levigate.Document) {
	b.Helper()
	if !reflect.DeepEqual(got, want) {
		b.Fatalf("the document is\n%+v\nwant\n%+v", got, want)
	}
}

// unbroken holds the log of a draft to its document: revisions without gaps, and
// the commands, made again on what was created, give what is there.
func (b *bench) unbroken(id string, created levigate.Document) []levigate.Applied {
	b.Helper()
	log, err := b.CommandsAfter(b.ctx, id, 0)
	b.must(err)
	d := b.read(id)
	if d.Revision != int64(len(log)) {
		b.Fatalf("revision %d after %d commands", d.Revision, len(log))
	}
	ids := map[string]bool{}
	for i, a := range log {
		if a.Revision != int64(i+1) || ids[a.Command.ID] || a.Command.Draft != id {
			b.Fatalf("command %d of %s is %+v", i+1, id, a)
		}
		ids[a.Command.ID] = true
		if _, clashes, err := created.Apply(&levigate.Command{Changes: slices.Clone(a.Command.Changes)}); err != nil || len(clashes) > 0 {
			b.Fatalf("command %d made again: %v %v", i+1, clashes, err)
		}
	}
	b.same(d.Document, created)
	return log
}
