package chart

import (
	"html"
	"math"
	"slices"
)

// Whisker is one value with its band on an axis that never moves, so that a
// change is seen as a move.
type Whisker struct {
	Min, Max         float64
	Value, Low, High float64
	Ticks            []Tick
}

// DrawWhisker gives the whisker as an inline SVG image. It repeats what stands
// beside it in figures, so it is hidden from who listens to the page.
func DrawWhisker(w Whisker) string {
	const width, inset, axis = 196.0, 6.0, 8.0
	var s svg
	at := func(v float64) float64 {
		share := math.Max(0, math.Min(1, (v-w.Min)/(w.Max-w.Min)))
		return inset + share*(width-2*inset)
	}
	s.put(`<svg class="whisker" viewBox="0 0 %.0f 28" width="%.0f" height="28" aria-hidden="true">`, width, width)
	s.line(inset, axis, width-inset, axis, stroke("rule"))
	var taken [][2]float64
	for _, t := range w.Ticks {
		x, half := at(t.At), 3.2*float64(len([]rune(t.Text)))
		s.line(x, axis-4, x, axis+4, stroke("rule"))
		middle := math.Max(half, math.Min(width-half, x))
		// The ends come first; a name between them that has no room is left out.
		if slices.ContainsFunc(taken, func(o [2]float64) bool { return middle-half < o[1]+4 && middle+half > o[0]-4 }) {
			continue
		}
		taken = append(taken, [2]float64{middle - half, middle + half})
		s.put(`<text x="%.1f" y="26" text-anchor="middle">%s</text>`, middle, html.EscapeString(t.Text))
	}
	low, high, mid := at(w.Low), at(w.High), at(w.Value)
	ink := stroke("ink") + ` stroke-width="2"`
	s.line(low, axis, high, axis, ink)
	s.line(low, axis-4, low, axis+4, ink)
	s.line(high, axis-4, high, axis+4, ink)
	s.put(`<circle cx="%.1f" cy="%.1f" r="3.5" fill="var(--ink)"/></svg>`, mid, axis)
	return s.b.String()
}
