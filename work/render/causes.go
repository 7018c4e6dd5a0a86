package render

import (
	"math"
	"slices"

	"levigate/quantity"
	"levigate/work"
)

// mostCauses is how many causes a block lists; the rest are counted.
const mostCauses = 8

// causes is a figure's causes as a table, largest first, and how many smaller
// ones were left out. One whose move rounds to nothing is left out too.
func causes(f *work.Figure) (t work.Table, left int) {
	t.Head = []string{"what makes the band", "at its low", "at its high", "evidence"}
	n := decimals(f)
	for i := range f.Moves {
		m := &f.Moves[i]
		low, high := signed(m.Low, n), signed(m.High, n)
		nothing := low == high && low == quantity.Fixed(0, n)
		if (i >= mostCauses || nothing) && !m.Cause.NotStated {
			left++
			continue
		}
		if m.Cause.NotStated {
			low, high = "±?", "±?"
		}
		t.Rows = append(t.Rows, []string{m.Cause.Name, low, high, m.Cause.Grade.String()})
	}
	return t, left
}

// decimals gives the largest move two digits, so that the small ones show
// beside it.
func decimals(f *work.Figure) int {
	most := 0.0
	for i := range f.Moves {
		most = math.Max(most, f.Moves[i].Size())
	}
	if most == 0 {
		return 0
	}
	return min(max(1-int(math.Floor(math.Log10(most))), 0), 4)
}

func signed(v float64, n int) string {
	s := Minus(quantity.Fixed(v, n))
	if v > 0 && s != quantity.Fixed(0, n) {
		s = "+" + s
	}
	return s
}

// Settle lists the readings that would help most, best first: those of the
// causes that make up most of the band.
func Settle(f *work.Figure) []string {
	const most = 2
	var out []string
	for i := range f.Moves {
		c := f.Moves[i].Cause
		if len(out) == most || f.Moves[i].Size() < f.Moves[0].Size()/4 {
			break
		}
		if c.Settle != "" && !slices.Contains(out, c.Settle) {
			out = append(out, c.Settle)
		}
	}
	return out
}
