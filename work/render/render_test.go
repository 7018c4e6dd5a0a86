package render

import (
	"slices"
	"strings"
	"testing"

	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

func figure(value, low, high float64, unit quantity.Unit) *work.Figure {
	return &work.Figure{Value: value, Low: low, High: high, Unit: unit, State: work.Good, Grade: cite.Estimated}
}

func TestBand(t *testing.T) {
	unstated := figure(0.3, 0.3, 0.3, quantity.One)
	unstated.Moves = []work.Move{{Cause: &work.Cause{NotStated: true}}}
	for _, c := range []struct {
		f              *work.Figure
		band, sentence string
	}{
		{figure(0.3027, 0.2769, 0.3421, quantity.One), "0.30 (0.28–0.34)", "between 0.28 and 0.34, nine times in ten"},
		{figure(-15.93, -16.9, -14.52, quantity.GramPer100g), "−15.9 (−16.9 to −14.5)", "between −16.9 and −14.5 g/100 g, nine times in ten"},
		{figure(-0.2, -1.5, 1.1, quantity.GramPer100g), "−0.2 (−1.5 to 1.1)", "between −1.5 and 1.1 g/100 g, nine times in ten"},
		{unstated, "0.30 (spread not stated)", "how far it may be off was not stated"},
		{absent(), "–", "needs the leaf of line 9"},
	} {
		if got := Band(c.f); got != c.band {
			t.Errorf("band %q, want %q", got, c.band)
		}
		if got := Sentence(c.f); got != c.sentence {
			t.Errorf("sentence %q, want %q", got, c.sentence)
		}
	}
}

// Outside a working an activity never shows a third decimal, however narrow
// its band.
func TestActivityShowsTwoDecimals(t *testing.T) {
	for _, half := range []float64{0, 1e-9, 0.0004, 0.003, 0.2} {
		f := figure(0.98765, 0.98765-half, 0.98765+half, quantity.One)
		if _, decimals, _ := strings.Cut(Value(f), "."); len(decimals) != 2 {
			t.Errorf("half-width %g shows %s", half, Value(f))
		}
	}
}

func TestProseKeepsNumbersWithTheirUnits(t *testing.T) {
	got := Prose("at most 12 g of water, 3.0 % of it at 25 °C, and a-word-that-is-wider-than-the-line-itself", 12, "", "")
	want := []string{"at most 12 g", "of water,", "3.0 % of it", "at 25 °C,", "and", "a-word-that-is-wider-than-the-line-itself", ""}
	if lines := strings.Split(got, "\n"); !slices.Equal(lines, want) {
		t.Errorf("got %q", lines)
	}
	if got := Tie("8.0 % in 5 g"); got != "8.0\u00a0% in 5\u00a0g" {
		t.Errorf("got %q", got)
	}
}

// Every line of a table fits the width asked for as long as names can wrap.
func TestTableFits(t *testing.T) {
	table := &work.Table{Head: []string{"name", "g", "what it is called by those who sell it"}}
	for range 3 {
		table.Rows = append(table.Rows, []string{strings.Repeat("word ", 20), "1.25", strings.Repeat("µnit ", 30)})
	}
	for _, width := range []int{60, 80, 100} {
		for _, line := range strings.Split(Table(table, width, "  "), "\n") {
			if wide(line) > width {
				t.Errorf("at %d: %q is %d wide", width, line, wide(line))
			}
		}
	}
}

func TestShortDropsOnlyEmptyDecimals(t *testing.T) {
	if got := short("100 × 2.5000 / (20.000 + 0.0010) ^ 10"); got != "100 × 2.5 / (20 + 0.001) ^ 10" {
		t.Errorf("got %s", got)
	}
}

func TestWorthLeavesOutNothingAndRepeats(t *testing.T) {
	grains := *figure(0, 0, 0, quantity.One)
	a, b := *figure(1, 0.5, 1.5, quantity.One), *figure(1, 0.5, 1.5, quantity.One)
	a.Title, b.Title = "Room", "Room"
	if got := Worth([]work.Figure{grains, a, b, *absent()}); len(got) != 2 {
		t.Errorf("%d figures kept", len(got))
	}
}
