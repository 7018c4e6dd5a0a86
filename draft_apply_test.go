package levigate

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"reflect"
	"testing"
)

func doc() Document {
	return Document{Head: map[string]string{"name": "Walnut hand polish"}, Lines: []Row{
		{"a", map[string]string{"material": "Glycerin", "percent": "26"}},
		{"b", map[string]string{"material": "Aqua", "percent": "2"}},
		{"c", map[string]string{"material": "sunflower oil refined", "percent": "qs"}},
	}}
}

func TestApplyClashes(t *testing.T) {
	for name, c := range map[string]struct {
		change Change
		clash  *Clash
	}{
		"as it was seen":      {Change{Do: Set, List: "lines", Row: "a", Field: "percent", From: "26", To: "25"}, nil},
		"changed meanwhile":   {Change{Do: Set, List: "lines", Row: "a", Field: "percent", From: "20", To: "25"}, &Clash{List: "lines", Row: "a", Field: "percent", Seen: "20", Now: "26", Mine: "25"}},
		"the same meanwhile":  {Change{Do: Set, List: "lines", Row: "a", Field: "percent", From: "20", To: "26"}, nil},
		"the row is gone":     {Change{Do: Set, List: "lines", Row: "x", Field: "percent", From: "20", To: "25"}, &Clash{List: "lines", Row: "x", Field: "percent", Seen: "20", Mine: "25", Gone: true}},
		"moved while removed": {Change{Do: Move, List: "lines", Row: "x", After: "a"}, &Clash{List: "lines", Row: "x", Gone: true}},
		"removed already":     {Change{Do: Remove, List: "lines", Row: "x"}, nil},
		"the head":            {Change{Do: Set, List: "head", Field: "name", From: "Polish", To: "Scrub"}, &Clash{List: "head", Field: "name", Seen: "Polish", Now: "Walnut hand polish", Mine: "Scrub"}},
	} {
		d := doc()
		_, clashes, err := d.Apply(&Command{Changes: []Change{c.change}})
		switch {
		case err != nil:
			t.Errorf("%s: %v", name, err)
		case c.clash == nil && len(clashes) > 0, c.clash != nil && (len(clashes) != 1 || clashes[0] != *c.clash):
			t.Errorf("%s: clashes %+v, want %+v", name, clashes, c.clash)
		case c.clash != nil && !reflect.DeepEqual(d, doc()):
			t.Errorf("%s: refused, and the document changed", name)
		}
	}
}

func TestApplyRefuses(t *testing.T) {
	for name, changes := range map[string][]Change{
		"nothing":            nil,
		"an unknown list":    {{Do: Set, List: "tail", Row: "a", Field: "x"}},
		"an unknown field":   {{Do: Set, List: "lines", Row: "a", Field: "colour"}},
		"an unknown head":    {{Do: Set, List: "head", Field: "colour"}},
		"an unknown verb":    {{Do: "burn", List: "lines", Row: "a"}},
		"a row twice":        {{Do: Insert, List: "lines", Row: "a"}},
		"a row without id":   {{Do: Insert, List: "lines"}},
		"a cell of nobody":   {{Do: Insert, List: "lines", Row: "n", Cells: map[string]string{"colour": "red"}}},
		"a cell too long":    {{Do: Set, List: "lines", Row: "a", Field: "note", To: string(make([]byte, MostCell+1))}},
		"one good, one bad":  {{Do: Set, List: "lines", Row: "a", Field: "percent", From: "26", To: "25"}, {Do: "burn", List: "lines", Row: "a"}},
		"more than there is": make([]Change, MostChanges+1),
	} {
		d := doc()
		if _, _, err := d.Apply(&Command{Changes: changes}); CodeOf(err) != Invalid || !reflect.DeepEqual(d, doc()) {
			t.Errorf("%s: %v, %+v", name, err, d)
		}
	}
}

// A thousand random commands, each undone in turn, give back every document on
// the way, byte by byte.
func TestInversesUndo(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 2))
	d := doc()
	state := func() string {
		b, err := json.Marshal(d.clone())
		if err != nil {
			t.Fatal(err)
		}
		return string(b)
	}
	var states []string
	var undo [][]Change
	for n := range 1000 {
		c := &Command{}
		for range 1 + r.IntN(4) {
			c.Changes = append(c.Changes, randomChange(r, &d, n*10+len(c.Changes)))
		}
		was := state()
		inverse, clashes, err := d.Apply(c)
		if err != nil {
			t.Fatal(err, c.Changes)
		}
		if len(clashes) > 0 || len(inverse) == 0 {
			continue
		}
		states, undo = append(states, was), append(undo, inverse)
	}
	if len(states) < 300 {
		t.Fatalf("only %d commands applied", len(states))
	}
	for i := len(undo) - 1; i >= 0; i-- {
		if _, clashes, err := d.Apply(&Command{Changes: undo[i]}); err != nil || len(clashes) > 0 {
			t.Fatal(i, err, clashes, undo[i])
		}
		if got := state(); got != states[i] {
			t.Fatalf("after undoing command %d\n%s\nwant\n%s", i, got, states[i])
		}
	}
}

func randomChange(r *rand.Rand, d *Document, n int) Change {
	row := func() string {
		if len(d.Lines) == 0 {
			return "none"
		}
		return d.Lines[r.IntN(len(d.Lines))].ID
	}
	switch r.IntN(5) {
	case 0:
		return Change{Do: Insert, List: "lines", Row: fmt.Sprint("n", n), After: row(), Cells: map[string]string{"percent": fmt.Sprint(n)}}
	case 1:
		return Change{Do: Remove, List: "lines", Row: row()}
	case 2:
		return Change{Do: Move, List: "lines", Row: row(), After: row()}
	case 3:
		return Change{Do: Set, List: "head", Field: "notes", From: d.Head["notes"], To: fmt.Sprint(n % 3)}
	}
	id := row()
	from := ""
	for _, x := range d.Lines {
		if x.ID == id {
			from = x.Cells["percent"]
		}
	}
	return Change{Do: Set, List: "lines", Row: id, Field: "percent", From: from, To: fmt.Sprint(n % 7)}
}
