package storetest

import (
	"context"
	"errors"
	"fmt"
	"reflect"
	"sync"
	"sync/atomic"

	"levigate"
)

const (
	editors = 16
	edits   = 12
)

// together runs do once for each of many editors at once.
func together(do func(who int)) {
	var all sync.WaitGroup
	for who := range editors {
		all.Go(func() { do(who) })
	}
	all.Wait()
}

// manyCells: each editor types into a line of their own, and nobody waits to see
// what the others did.
func manyCells(b *bench) {
	d := levigate.Document{Lines: []levigate.Row{}, Making: []levigate.Row{}, Head: map[string]string{}}
	for who := range editors {
		d.Lines = append(d.Lines, levigate.Row{ID: fmt.Sprint("l", who), Cells: map[string]string{"percent": "0"}})
	}
	b.must(b.CreateDraft(b.ctx, &levigate.Draft{ID: "d", Document: d}))
	together(func(who int) {
		for i := range edits {
			_, err := b.Apply(b.ctx, &levigate.Command{ID: fmt.Sprintf("%d-%d", who, i), Draft: "d",
				Changes: []levigate.Change{set(fmt.Sprint("l", who), fmt.Sprint(i), fmt.Sprint(i+1))}})
			if err != nil {
				b.Error(who, i, err)
			}
			if _, err := b.Draft(b.ctx, "d"); err != nil {
				b.Error(err)
			}
		}
	})
	if log := b.unbroken("d", d); len(log) != editors*edits {
		b.Errorf("%d commands of %d are kept", len(log), editors*edits)
	}
	for _, l := range b.read("d").Document.Lines {
		if l.Cells["percent"] != fmt.Sprint(edits) {
			b.Errorf("line %s holds %s", l.ID, l.Cells["percent"])
		}
	}
}

// oneCell: all type into the same cell; who clashes looks again. As each adds
// one to what is there, nothing is lost if the sum is right.
func oneCell(b *bench) {
	b.draft("d")
	b.edit("d", set("a", "26", "0"))
	var clashes atomic.Int64
	together(func(who int) {
		seen := "0"
		for i := 0; i < edits/2; {
			var n int
			fmt.Sscan(seen, &n)
			_, err := b.Apply(b.ctx, &levigate.Command{ID: fmt.Sprintf("%d-%d-%s", who, i, seen), Draft: "d",
				Changes: []levigate.Change{set("a", seen, fmt.Sprint(n+1))}})
			e, clash := errors.AsType[*levigate.ClashError](err)
			switch {
			case err == nil:
				i++
				seen = fmt.Sprint(n + 1)
			case clash:
				clashes.Add(1)
				seen = e.Clashes[0].Now
			default:
				b.Error(err)
				return
			}
		}
	})
	// A cell that holds already what an editor wants takes the command without a
	// change, so the cell says how many changed it.
	log, changed := b.unbroken("d", polish()), 0
	for _, a := range log[1:] {
		changed += len(a.Inverse)
	}
	if got := b.read("d").Document.Lines[0].Cells["percent"]; got != fmt.Sprint(changed) || len(log) != 1+editors*edits/2 {
		b.Errorf("the cell holds %s after %d changes by %d commands", got, changed, len(log))
	}
	b.Logf("%d clashes", clashes.Load())
}

// oneID: the same command sent many times at once is applied once.
func oneID(b *bench) {
	b.draft("d")
	var first atomic.Int64
	together(func(int) {
		a, err := b.Apply(b.ctx, &levigate.Command{ID: "one", Draft: "d", Changes: []levigate.Change{set("a", "26", "25")}})
		if err != nil || a.Revision != 1 {
			b.Errorf("%+v %v", a, err)
		} else if !a.Again {
			first.Add(1)
		}
	})
	if first.Load() != 1 || len(b.unbroken("d", polish())) != 1 {
		b.Errorf("applied %d times", first.Load())
	}
}

// calledOff: whoever no longer waits leaves everything as it was, or done whole.
func calledOff(b *bench) {
	b.draft("d")
	gone, cancel := context.WithCancel(b.ctx)
	cancel()
	before := b.read("d")
	for what, do := range map[string]func() error{
		"create": func() error { return b.CreateDraft(gone, &levigate.Draft{ID: "e"}) },
		"apply": func() error {
			_, err := b.Apply(gone, &levigate.Command{ID: "x", Draft: "d", Changes: []levigate.Change{set("a", "26", "25")}})
			return err
		},
		"undo":   func() error { _, err := b.Undo(gone, "d", "u", ""); return err },
		"list":   func() error { _, err := b.ListDrafts(gone, "", 1); return err },
		"delete": func() error { return b.DeleteDraft(gone, "d") },
		"record": func() error { return b.AddRecord(gone, &levigate.Record{ID: "r", Kind: "reading"}) },
		"freeze": func() error { return b.Freeze(gone, &levigate.Version{ID: "v", Draft: "d"}) },
	} {
		if err := do(); !errors.Is(err, context.Canceled) {
			b.Errorf("%s: %v", what, err)
		}
	}
	if after := b.read("d"); !reflect.DeepEqual(before, after) {
		b.Errorf("%+v, was %+v", after, before)
	}
	// Called off in the middle: what was acknowledged is there, and nothing half.
	acknowledged := make([]map[string]bool, editors)
	together(func(who int) {
		acknowledged[who] = map[string]bool{}
		for i := range edits {
			ctx, cancel := context.WithCancel(b.ctx)
			if i%2 == 0 {
				go cancel()
			}
			id := fmt.Sprintf("%d-%d", who, i)
			_, err := b.Apply(ctx, &levigate.Command{ID: id, Draft: "d", Changes: []levigate.Change{
				{Do: levigate.Insert, List: "lines", Row: id, Cells: map[string]string{"note": id}},
				{Do: levigate.Insert, List: "making", Row: id, Cells: map[string]string{"text": id}},
			}})
			cancel()
			switch {
			case err == nil:
				acknowledged[who][id] = true
			case !errors.Is(err, context.Canceled):
				b.Error(err)
			}
		}
	})
	log := b.unbroken("d", polish())
	kept := map[string]bool{}
	for _, a := range log {
		kept[a.Command.ID] = true
	}
	for _, ids := range acknowledged {
		for id := range ids {
			if !kept[id] {
				b.Errorf("%s was acknowledged and is not there", id)
			}
		}
	}
	b.Logf("%d of %d were kept", len(log), editors*edits)
}
