package ledger

import (
	"cmp"
	"fmt"
	"maps"
	"slices"

	"levigate"
)

// walk goes back from the head, from each record to the one it was built upon.
// What it meets belongs to the chain; what it never meets was put in.
type walk struct {
	links  []link
	hashes map[string]int  // which record carries a hash
	places map[int64][]int // which were written at a place
	order  []int64         // the places, last first
	met    []bool
	faults []levigate.Fault

	// Where it stands: the place it looks at, the hash it looks for, and whether
	// the one that told it can be believed: not when it was edited.
	place int64
	want  string
	sure  bool
}

// Faults says what was done to the chain, in the order of the places.
func (c *Checker) Faults(head Head) []levigate.Fault {
	w := &walk{links: c.links, hashes: map[string]int{}, places: map[int64][]int{}, met: make([]bool, len(c.links))}
	for i := range c.links {
		l := &c.links[i]
		if at, taken := w.hashes[l.hash]; !taken || c.links[at].written == 0 {
			w.hashes[l.hash] = i
		}
		w.places[l.place()] = append(w.places[l.place()], i)
	}
	w.order = slices.SortedFunc(maps.Keys(w.places), func(a, b int64) int { return cmp.Compare(b, a) })
	w.start(head)
	for w.place > 0 {
		w.step()
	}
	for i := range w.links {
		if !w.met[i] {
			w.fault(&w.links[i], "was put in: no record after it was built upon it")
		}
	}
	slices.SortStableFunc(w.faults, func(a, b levigate.Fault) int { return cmp.Compare(a.Seq, b.Seq) })
	return w.faults
}

func (w *walk) start(head Head) {
	w.place, w.want, w.sure = head.Seq, head.Hash, true
	i, there := w.hashes[head.Hash]
	switch {
	case len(w.links) == 0 && head == Head{}:
	case head.Seq <= 0 || head.Hash == "":
		w.note("the note of the last record was removed or edited")
		w.place, w.want, w.sure = w.last(), "", false
	case there && w.links[i].written > 0 && w.links[i].written != head.Seq:
		w.note("the note of the last record was edited: it says place %d, and the record it means was written at place %d", head.Seq, w.links[i].written)
		w.place = w.links[i].written
	}
}

func (w *walk) last() int64 {
	if len(w.order) == 0 {
		return 0
	}
	return w.order[0]
}

// step takes one record, or one gap, and goes on to what stood before.
func (w *walk) step() {
	if i, there := w.hashes[w.want]; there && w.sure && !w.met[i] {
		w.take(i, "")
		return
	}
	left := slices.DeleteFunc(slices.Clone(w.places[w.place]), func(i int) bool { return w.met[i] })
	switch {
	case len(left) == 0:
		w.gap()
	case w.sure:
		w.take(left[0], "was edited and hashed anew, or exchanged: what comes after it was built upon another")
	default:
		at := slices.IndexFunc(left, func(i int) bool { return w.links[i].hash == w.want })
		w.take(left[max(at, 0)], "")
	}
}

// take meets a record and says what was done to it: what is given, or what it
// shows itself.
func (w *walk) take(i int, done string) {
	l := &w.links[i]
	w.met[i] = true
	switch {
	case l.written == 0:
		w.fault(l, "was edited: it is not what was hashed when it was written")
	case done != "":
		w.fault(l, "%s", done)
	case l.written != l.seq:
		w.fault(l, "was moved: it stands at place %d and was written at place %d", l.seq, l.written)
	}
	w.place, w.want, w.sure = w.place-1, l.prev, l.written > 0
	if w.sure {
		w.place = l.written - 1
	}
	if w.place == 0 && w.sure && l.prev != "" {
		w.fault(l, "claims to be the first, and follows another")
	}
}

// gap names the records removed between here and the next one that is left.
func (w *walk) gap() {
	from := int64(1)
	for _, p := range w.order {
		if p < w.place && slices.ContainsFunc(w.places[p], func(i int) bool { return !w.met[i] }) {
			from = max(from, p+1)
			break
		}
	}
	text := fmt.Sprintf("the record at place %d was removed", from)
	if from < w.place {
		text = fmt.Sprintf("the records at places %d to %d were removed", from, w.place)
	}
	w.faults = append(w.faults, levigate.Fault{Seq: from, Text: text})
	w.place, w.want, w.sure = from-1, "", false
}

func (w *walk) fault(l *link, format string, args ...any) {
	w.faults = append(w.faults, levigate.Fault{Seq: l.seq, Record: l.id, Text: fmt.Sprintf(format, args...)})
}

func (w *walk) note(format string, args ...any) {
	w.faults = append(w.faults, levigate.Fault{Text: fmt.Sprintf(format, args...)})
}
