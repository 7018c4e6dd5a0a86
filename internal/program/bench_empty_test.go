package program

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"levigate"
	"levigate/internal/api"
	"levigate/internal/store/sqlite/sqlitetest"
	"levigate/work"
)

// A sheet with nothing on it is told nothing about: a water activity below
// every limit would be read as an answer.
func TestEmptySheetHasNoFigures(t *testing.T) {
	b := NewBench(New(), sqlitetest.Open(t))
	for _, lines := range [][]levigate.Row{
		nil,
		{{ID: "a", Cells: map[string]string{"material": "Glycerin", "percent": "0"}}},
		{{ID: "a", Cells: map[string]string{}}},
	} {
		d := &levigate.Draft{Document: levigate.Document{Head: map[string]string{"product": "bath"}, Lines: lines}}
		c, err := b.check(context.Background(), d, api.Ask{Curves: true})
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range c.made.Figures {
			if f.State != work.Missing {
				t.Errorf("%v: %s is %v", lines, f.ID, f.Value)
			}
		}
		if c.wire.Answer != "No water activity: no line has a percentage." || len(c.wire.Curves) > 0 {
			t.Errorf("%v: %s, %d curves", lines, c.wire.Answer, len(c.wire.Curves))
		}
	}
}

// A pasted list of names nobody knows is not said over in every figure.
func TestManyUnknownAreCounted(t *testing.T) {
	b := NewBench(New(), sqlitetest.Open(t))
	d := &levigate.Draft{Document: levigate.Document{Head: map[string]string{"product": "bath"}}}
	for i := range 500 {
		id := fmt.Sprintf("row-%d", i)
		d.Document.Lines = append(d.Document.Lines, levigate.Row{ID: id, Cells: map[string]string{"material": "zzyzx " + id, "percent": "0.2"}})
	}
	c, err := b.check(context.Background(), d, api.Ask{})
	if err != nil {
		t.Fatal(err)
	}
	if !strings.HasSuffix(c.wire.Answer, "zzyzx row-4 and 495 more.") {
		t.Error(c.wire.Answer)
	}
	for _, f := range c.made.Figures {
		if why := strings.Join(f.Notes, " "); len(why) > 200 {
			t.Errorf("%s: %s", f.ID, why)
		}
	}
}
