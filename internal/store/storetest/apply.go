package storetest

import (
	"errors"
	"reflect"

	"levigate"
)

func apply(b *bench) {
	b.draft("d")
	c := &levigate.Command{ID: "one", Draft: "d", Label: "less glycerin", By: "Mara", Changes: []levigate.Change{
		set("a", "26", "25"),
		{Do: levigate.Insert, List: "lines", Row: "n", After: "a", Cells: map[string]string{"material": "Honey", "percent": "1"}},
		{Do: levigate.Remove, List: "making", Row: "s"},
		{Do: levigate.Move, List: "lines", Row: "c"},
	}}
	a, err := b.Apply(b.ctx, c)
	b.must(err)
	if a.Revision != 1 || a.Again || len(a.Inverse) != 4 || a.Command.ID != "one" || a.Command.At.IsZero() || a.Command.Changes[2].Cells["text"] != "stir" {
		b.Errorf("applied as %+v", a)
	}
	if c.Changes[2].Cells != nil {
		b.Error("the sender's command was written into")
	}
	want := polish()
	if _, clashes, err := want.Apply(&levigate.Command{Changes: c.Changes}); err != nil || len(clashes) > 0 {
		b.Fatal(clashes, err)
	}
	want.Making = []levigate.Row{}
	d := b.read("d")
	b.same(d.Document, want)
	if d.Revision != 1 || !d.Changed.After(d.Created) && !d.Changed.Equal(d.Created) {
		b.Errorf("kept as %+v", d)
	}
	b.reopen()
	b.same(b.read("d").Document, want)
	// What is made on an older revision and touches other cells is applied.
	late, err := b.Apply(b.ctx, &levigate.Command{ID: "two", Draft: "d", Base: 0, Changes: []levigate.Change{set("b", "2", "3")}})
	b.must(err)
	if late.Revision != 2 {
		b.Errorf("revision %d", late.Revision)
	}
	// A change that is there already is a revision all the same.
	none, err := b.Apply(b.ctx, &levigate.Command{ID: "three", Draft: "d", Base: 2, Changes: []levigate.Change{set("b", "2", "3")}})
	b.must(err)
	if none.Revision != 3 || len(none.Inverse) != 0 {
		b.Errorf("%+v", none)
	}
	b.unbroken("d", polish())
}

func resend(b *bench) {
	b.draft("d")
	b.draft("e")
	c := levigate.Command{ID: "one", Draft: "d", Label: "less", Changes: []levigate.Change{set("a", "26", "25"), {Do: levigate.Remove, List: "lines", Row: "b"}}}
	first, err := b.Apply(b.ctx, &c)
	b.must(err)
	b.edit("d", set("a", "25", "24"))
	b.reopen()
	for range 3 {
		later := c
		later.Base = 1 // whoever sends again may have heard of more meanwhile
		a, err := b.Apply(b.ctx, &later)
		b.must(err)
		if !a.Again || a.Revision != 1 || !reflect.DeepEqual(a.Command, first.Command) || !reflect.DeepEqual(a.Inverse, first.Inverse) {
			b.Fatalf("sent again: %+v\nfirst: %+v", a, first)
		}
	}
	if d := b.read("d"); d.Revision != 2 || d.Document.Lines[0].Cells["percent"] != "24" {
		b.Errorf("sent again, it was made again: %+v", d)
	}
	for what, other := range map[string]levigate.Command{
		"other changes": {ID: "one", Draft: "d", Label: "less", Changes: []levigate.Change{set("a", "24", "23")}},
		"other label":   {ID: "one", Draft: "d", Label: "more", Changes: c.Changes},
		"other draft":   {ID: "one", Draft: "e", Label: "less", Changes: c.Changes},
	} {
		_, err := b.Apply(b.ctx, &other)
		if levigate.CodeOf(err) != levigate.Conflict {
			b.Errorf("%s under the same id: %v", what, err)
		}
	}
	_, err = b.Undo(b.ctx, "d", "one", "")
	b.code(err, levigate.Conflict)
	u, err := b.Undo(b.ctx, "d", "undo", "")
	b.must(err)
	again, err := b.Undo(b.ctx, "d", "undo", "")
	b.must(err)
	if u.Again || !again.Again || again.Revision != u.Revision || b.read("d").Revision != u.Revision {
		b.Errorf("undo sent again: %+v, first %+v", again, u)
	}
	_, err = b.Redo(b.ctx, "d", "undo", "")
	b.code(err, levigate.Conflict)
	b.unbroken("d", polish())
}

func clash(b *bench) {
	b.draft("d")
	b.edit("d", set("a", "26", "25"), levigate.Change{Do: levigate.Remove, List: "lines", Row: "b"})
	before := b.read("d")
	_, err := b.Apply(b.ctx, &levigate.Command{ID: "late", Draft: "d", Changes: []levigate.Change{
		name("Walnut hand polish", "Polish"), set("a", "26", "20"), set("b", "2", "3"),
	}})
	e, ok := errors.AsType[*levigate.ClashError](err)
	if !ok || levigate.CodeOf(err) != levigate.Conflict {
		b.Fatalf("got %v", err)
	}
	want := []levigate.Clash{
		{List: "lines", Row: "a", Field: "percent", Seen: "26", Now: "25", Mine: "20"},
		{List: "lines", Row: "b", Field: "percent", Seen: "2", Mine: "3", Gone: true},
	}
	if e.Draft != "d" || e.Revision != 1 || !reflect.DeepEqual(e.Clashes, want) {
		b.Errorf("clashes %+v", e)
	}
	if after := b.read("d"); !reflect.DeepEqual(before, after) {
		b.Errorf("refused, and yet\n%+v\nwas\n%+v", after, before)
	}
	b.unbroken("d", polish())
	// Refused, its id is free: the same edit, put right, may take it.
	if a, err := b.Apply(b.ctx, &levigate.Command{ID: "late", Draft: "d", Base: 1, Changes: []levigate.Change{set("a", "25", "20")}}); err != nil || a.Revision != 2 {
		b.Errorf("%+v, %v", a, err)
	}
}

func refuse(b *bench) {
	b.draft("d")
	for what, c := range map[string]levigate.Command{
		"no changes":       {ID: "x", Draft: "d"},
		"no id":            {Draft: "d", Changes: []levigate.Change{set("a", "26", "25")}},
		"an unknown field": {ID: "x", Draft: "d", Changes: []levigate.Change{{Do: levigate.Set, List: "lines", Row: "a", Field: "colour"}}},
		"one good one bad": {ID: "x", Draft: "d", Changes: []levigate.Change{set("a", "26", "25"), {Do: "burn", List: "lines", Row: "a"}}},
		"an undo by hand":  {ID: "x", Draft: "d", Undoes: "y", Changes: []levigate.Change{set("a", "26", "25")}},
		"a label no text":  {ID: "x", Draft: "d", Label: "\xff", Changes: []levigate.Change{set("a", "26", "25")}},
		"a cell no text":   {ID: "x", Draft: "d", Changes: []levigate.Change{set("a", "26", "\xff")}},
	} {
		if _, err := b.Apply(b.ctx, &c); levigate.CodeOf(err) != levigate.Invalid {
			b.Errorf("%s: %v", what, err)
		}
	}
	for _, base := range []int64{-1, 1} {
		_, err := b.Apply(b.ctx, &levigate.Command{ID: "x", Draft: "d", Base: base, Changes: []levigate.Change{set("a", "26", "25")}})
		b.code(err, levigate.Conflict)
	}
	_, err := b.Apply(b.ctx, &levigate.Command{ID: "x", Draft: "nobody", Changes: []levigate.Change{set("a", "26", "25")}})
	b.code(err, levigate.NotFound)
	b.unbroken("d", polish())
}

func commandsAfter(b *bench) {
	b.draft("d")
	b.draft("e")
	for _, s := range [][2]string{{"26", "1"}, {"1", "2"}, {"2", "3"}, {"3", "4"}} {
		b.edit("d", set("a", s[0], s[1]))
		b.edit("e", set("a", s[0], s[1]))
	}
	for after, want := range map[int64]int{-1: 4, 0: 4, 2: 2, 4: 0, 9: 0} {
		got, err := b.CommandsAfter(b.ctx, "d", after)
		b.must(err)
		if got == nil || len(got) != want {
			b.Errorf("after %d: %+v", after, got)
		}
		for i, a := range got {
			if a.Revision != max(after, 0)+int64(i)+1 || a.Command.Draft != "d" || a.Command.By != "Mara" || len(a.Inverse) != 1 {
				b.Errorf("after %d, %d: %+v", after, i, a)
			}
		}
	}
	_, err := b.CommandsAfter(b.ctx, "nobody", 0)
	b.code(err, levigate.NotFound)
}
