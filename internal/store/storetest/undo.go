package storetest

import (
	"fmt"
	"math/rand/v2"

	"levigate"
)

// at holds the percent of line a to what undo and redo ought to have left.
func (b *bench) at(want string) {
	b.Helper()
	if got := b.read("d").Document.Lines[0].Cells["percent"]; got != want {
		b.Fatalf("the percent is %q, want %q", got, want)
	}
}

func (b *bench) undo(id string) *levigate.Applied {
	b.Helper()
	b.n++
	a, err := b.Undo(b.ctx, id, fmt.Sprintf("undo-%d", b.n), "Ines")
	b.must(err)
	return a
}

func (b *bench) redo(id string) *levigate.Applied {
	b.Helper()
	b.n++
	a, err := b.Redo(b.ctx, id, fmt.Sprintf("redo-%d", b.n), "Ines")
	b.must(err)
	return a
}

func (b *bench) nothing(a *levigate.Applied) {
	b.Helper()
	if a != nil {
		b.Fatalf("there was nothing to do, and %+v was done", a)
	}
}

func undo(b *bench) {
	b.draft("d")
	b.draft("other")
	b.edit("other", set("a", "26", "99"))
	b.nothing(b.undo("d"))
	b.nothing(b.redo("d"))
	one := b.edit("d", set("a", "26", "1"))
	two := b.edit("d", set("a", "1", "2"))
	u2 := b.undo("d")
	b.at("1")
	if u2.Revision != 3 || u2.Command.Undoes != two.Command.ID || u2.Command.Label != two.Command.Label || u2.Command.By != "Ines" || u2.Command.Draft != "d" {
		b.Errorf("undone as %+v", u2)
	}
	u1 := b.undo("d")
	b.at("26")
	if u1.Command.Undoes != one.Command.ID {
		b.Errorf("undone as %+v", u1)
	}
	b.nothing(b.undo("d"))
	r1 := b.redo("d")
	b.at("1")
	if r1.Command.Undoes != u1.Command.ID || r1.Command.Label != one.Command.Label {
		b.Errorf("done again as %+v", r1)
	}
	b.redo("d")
	b.at("2")
	b.nothing(b.redo("d"))
	b.undo("d")
	b.undo("d")
	b.at("26")
	b.unbroken("d", polish())
	_, err := b.Undo(b.ctx, "nobody", "x", "")
	b.code(err, levigate.NotFound)
	_, err = b.Redo(b.ctx, "nobody", "x", "")
	b.code(err, levigate.NotFound)
	_, err = b.Undo(b.ctx, "d", "", "")
	b.code(err, levigate.Invalid)
}

func redoEnds(b *bench) {
	b.draft("d")
	b.edit("d", set("a", "26", "1"))
	b.edit("d", set("a", "1", "2"))
	b.edit("d", set("a", "2", "3"))
	b.undo("d")
	b.undo("d")
	// An edit that changes nothing ends nothing.
	b.edit("d", set("a", "0", "1"))
	b.redo("d")
	b.at("2")
	b.edit("d", set("a", "2", "7"))
	b.nothing(b.redo("d"))
	b.at("7")
	b.undo("d")
	b.at("2")
	b.undo("d")
	b.at("1")
	b.undo("d")
	b.at("26")
	b.nothing(b.undo("d"))
	for _, want := range []string{"1", "2", "7"} {
		b.redo("d")
		b.at(want)
	}
	b.nothing(b.redo("d"))
	b.unbroken("d", polish())
}

func undoReopened(b *bench) {
	b.draft("d")
	b.edit("d", set("a", "26", "1"))
	b.edit("d", set("a", "1", "2"))
	b.reopen()
	b.undo("d")
	b.at("1")
	b.reopen()
	b.undo("d")
	b.at("26")
	b.reopen()
	b.nothing(b.undo("d"))
	b.redo("d")
	b.at("1")
	b.reopen()
	b.redo("d")
	b.at("2")
	b.nothing(b.redo("d"))
	b.unbroken("d", polish())
}

func undoPaste(b *bench) {
	b.draft("d")
	b.edit("d", set("b", "2", "3"))
	before := b.read("d").Document
	var paste []levigate.Change
	after := "b"
	for i := range 200 {
		id := fmt.Sprintf("p%d", i)
		paste = append(paste, levigate.Change{Do: levigate.Insert, List: "lines", Row: id, After: after, Cells: map[string]string{"material": "Clay", "percent": "0.1"}},
			levigate.Change{Do: levigate.Set, List: "lines", Row: id, Field: "note", To: fmt.Sprint(i)})
		after = id
	}
	paste = append(paste, levigate.Change{Do: levigate.Remove, List: "lines", Row: "a"}, levigate.Change{Do: levigate.Move, List: "lines", Row: "c"},
		levigate.Change{Do: levigate.Move, List: "lines", Row: "p0", After: "p199"}, levigate.Change{Do: levigate.Remove, List: "lines", Row: "p50"})
	b.edit("d", paste...)
	pasted := b.read("d").Document
	if len(pasted.Lines) != 201 {
		b.Fatalf("%d lines", len(pasted.Lines))
	}
	for range 2 {
		b.undo("d")
		b.same(b.read("d").Document, before)
		b.redo("d")
		b.same(b.read("d").Document, pasted)
	}
	b.undo("d")
	b.undo("d")
	b.same(b.read("d").Document, polish())
	b.unbroken("d", polish())
}

// undoWalks goes at random, and holds the store to two piles kept here.
func undoWalks(b *bench) {
	r := rand.New(rand.NewPCG(2, 4))
	b.draft("d")
	done, undone := []string{"26"}, []string{}
	for i := range 150 {
		last := len(done) - 1
		switch r.IntN(3) {
		case 0:
			to := fmt.Sprint(i + 100)
			b.edit("d", set("a", done[last], to))
			done, undone = append(done, to), nil
		case 1:
			if a := b.undo("d"); last == 0 {
				b.nothing(a)
			} else {
				undone, done = append(undone, done[last]), done[:last]
			}
		case 2:
			if a := b.redo("d"); len(undone) == 0 {
				b.nothing(a)
			} else {
				done, undone = append(done, undone[len(undone)-1]), undone[:len(undone)-1]
			}
		}
		b.at(done[len(done)-1])
	}
	b.unbroken("d", polish())
}
