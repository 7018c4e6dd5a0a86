package main

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"levigate"
	"levigate/wire"
)

// faultsIn names what is wrong with a draft and its edits, by what the hands
// were told: an edit acknowledged is there once, at the revision that was told;
// one refused is not there; one that was sent may be; nothing else is; and the
// draft is what its edits make of what it was at first.
func faultsIn(hands []*hand, began levigate.Document, d wire.Draft, log []wire.CommandAt) (faults []string) {
	fault := func(format string, args ...any) { faults = append(faults, fmt.Sprintf(format, args...)) }
	acknowledged, refused, sent := map[string]int64{}, map[string]bool{}, map[string]bool{}
	for _, h := range hands {
		maps.Copy(acknowledged, h.acknowledged)
		maps.Copy(refused, h.refused)
		if h.sent != nil {
			sent[h.sent.ID] = true
		}
	}
	at, made := map[string]int64{}, wire.DocumentOf(began)
	for i, c := range log {
		id := c.Command.ID
		if c.Revision != int64(i+1) {
			fault("edit %d of the draft is at revision %d", i+1, c.Revision)
		}
		if at[id] != 0 {
			fault("%s is there twice, at %d and %d", id, at[id], c.Revision)
		}
		at[id] = c.Revision
		if _, told := acknowledged[id]; refused[id] || !told && !sent[id] {
			fault("%s is there, and was refused or never sent", id)
		}
		if _, clashes, err := made.Apply(&c.Command); err != nil || len(clashes) > 0 {
			fault("%s does not fit what came before it: %v %v", id, err, clashes)
		}
	}
	for _, id := range slices.Sorted(maps.Keys(acknowledged)) {
		if at[id] != acknowledged[id] {
			fault("%s was acknowledged at revision %d and is at %d", id, acknowledged[id], at[id])
		}
	}
	is, _ := json.Marshal(wire.DocumentOf(d.Document))
	if ought, _ := json.Marshal(wire.DocumentOf(made)); string(is) != string(ought) || d.Revision != int64(len(log)) {
		fault("the draft at revision %d is not what its %d edits make\n%.300s\n%.300s", d.Revision, len(log), is, ought)
	}
	return faults
}

// The checks above must be able to fail.
func TestFaultsOfAKilledServerAreFound(t *testing.T) {
	command := func(id, from string) wire.CommandAt {
		return wire.CommandAt{Command: levigate.Command{ID: id, Changes: []levigate.Change{{Do: levigate.Set, List: "head", Field: "notes", From: from, To: id}}}}
	}
	numbered := func(log ...wire.CommandAt) []wire.CommandAt {
		for i := range log {
			log[i].Revision = int64(i + 1)
		}
		return log
	}
	a, b := command("a", ""), command("b", "a")
	draft := func(notes string, revision int64) wire.Draft {
		return wire.Draft{Revision: revision, Document: levigate.Document{Head: map[string]string{"notes": notes}}}
	}
	told := func(acknowledged ...string) *hand {
		h := &hand{acknowledged: map[string]int64{}, refused: map[string]bool{"r": true}, sent: &wire.NewCommand{ID: "b"}}
		for i, id := range acknowledged {
			h.acknowledged[id] = int64(i + 1)
		}
		return h
	}
	for _, c := range []struct {
		name string
		hand *hand
		d    wire.Draft
		log  []wire.CommandAt
		want string
	}{
		{"as told", told("a", "b"), draft("b", 2), numbered(a, b), ""},
		{"sent, kept, not answered", told("a"), draft("b", 2), numbered(a, b), ""},
		{"sent, not kept", told("a"), draft("a", 1), numbered(a), ""},
		{"lost", told("a", "b"), draft("a", 1), numbered(a), "b was acknowledged at revision 2 and is at 0"},
		{"lost with its document kept", told("a"), draft("b", 1), numbered(a), "is not what its 1 edits make"},
		{"kept with its document lost", told("a", "b"), draft("a", 2), numbered(a, b), "is not what its 2 edits make"},
		{"twice", told("a"), draft("a", 2), numbered(a, command("a", "a")), "a is there twice, at 1 and 2"},
		{"moved", told("b", "a"), draft("b", 2), numbered(a, b), "a was acknowledged at revision 2 and is at 1"},
		{"a gap", told("a"), draft("b", 2), []wire.CommandAt{{Revision: 1, Command: a.Command}, {Revision: 3, Command: b.Command}}, "edit 2 of the draft is at revision 3"},
		{"refused and kept", told("a"), draft("r", 2), numbered(a, command("r", "a")), "r is there, and was refused"},
		{"from nowhere", told("a"), draft("x", 2), numbered(a, command("x", "a")), "x is there, and was refused or never sent"},
		{"out of order", told(), draft("b", 1), numbered(b), "b does not fit"},
	} {
		got := strings.Join(faultsIn([]*hand{c.hand}, levigate.Document{}, c.d, c.log), "\n")
		if c.want == "" && got != "" || !strings.Contains(got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}
