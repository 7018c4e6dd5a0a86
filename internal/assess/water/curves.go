package water

import (
	"fmt"
	"math"

	"levigate"
	"levigate/internal/assess/part"
	"levigate/refdata"
	"levigate/work"
)

// isotherm draws the formula's moisture curve: what it holds against activity,
// with the growth limits and its own point on it.
func (y *system) isotherm(a float64, pinned bool) {
	grid := make([]float64, 33) // 0.02 to 0.98
	for i := range grid {
		grid[i] = float64(2+3*i) / 100
	}
	f := y.pinnedLook(grid, a, pinned)
	down, up := f.spreads(len(grid), f.holdsMore)
	c := levigate.Curve{ID: "water.isotherm",
		X: levigate.Axis{Title: "Water activity", Unit: "1", Values: grid},
		Y: levigate.Axis{Title: "Water held", Unit: "g/100 g", Values: append([]float64(nil), f.all[:len(grid)]...)},
	}
	for p := range grid {
		c.Low = append(c.Low, math.Max(0, f.all[p]-down[p]))
		c.High = append(c.High, f.all[p]+up[p])
	}
	c.Marks = append(c.Marks, levigate.CurveMark{ID: "formula", Text: "this formula", X: a, ToX: a, Y: y.total})
	for _, r := range refdata.Criteria() {
		w, _ := y.sum.Water(r.Activity)
		c.Marks = append(c.Marks, levigate.CurveMark{ID: "limit/" + r.Figure, Text: r.Says, X: r.Activity, ToX: r.Activity, Y: w})
	}
	y.sheet.Assessment.Curves = append(y.sheet.Assessment.Curves, c)
}

// spreads is how far the first n points may lie below and above, all causes
// added in quadrature, each side by itself. move tells what one end of a cause
// does at a point.
func (f *field) spreads(n int, move func(p int, d []delta, water float64) float64) (down, up []float64) {
	down, up = make([]float64, n), make([]float64, n)
	f.each(func(_ *work.Cause, low, high []delta, lw, hw float64) {
		for p := range n {
			l, h := move(p, low, lw), move(p, high, hw)
			below, above := math.Min(math.Min(l, h), 0), math.Max(math.Max(l, h), 0)
			down[p] += below * below
			up[p] += above * above
		}
	})
	for p := range n {
		down[p], up[p] = math.Sqrt(down[p]), math.Sqrt(up[p])
	}
	return down, up
}

// rinse draws the path from the tube to the sink: water added against the
// activity.
func (y *system) rinse(a float64, pinned bool) {
	grid := part.RinseGrid
	at := make([]float64, len(grid))
	totals := make([]float64, len(grid))
	for i, x := range grid {
		totals[i] = y.total + x
	}
	y.sum.Path(totals, at)
	f := y.pinnedLook(at, a, pinned)
	jumps := make([]bool, len(grid))
	for p := range grid {
		jumps[p] = f.steady(p, totals[p])
	}
	down, up := f.spreads(len(grid), func(p int, d []delta, water float64) float64 {
		if jumps[p] {
			return 0
		}
		return f.shift(p, d, water)
	})
	for p := range grid {
		if jumps[p] {
			down[p], up[p] = saturationWidth, saturationWidth
		}
	}
	c := levigate.Curve{ID: "water.rinse",
		X: levigate.Axis{Title: "Water added", Unit: "g/100 g", Values: grid},
		Y: levigate.Axis{Title: "Water activity", Unit: "1", Values: at},
	}
	for p := range grid {
		c.Low = append(c.Low, math.Max(0, at[p]-down[p]))
		c.High = append(c.High, math.Min(1, at[p]+up[p]))
	}
	for _, r := range refdata.Criteria() {
		w, _ := y.sum.Water(r.Activity)
		if room := w - y.total; room > 0 && room < grid[len(grid)-1] {
			c.Marks = append(c.Marks, levigate.CurveMark{ID: "limit/" + r.Figure, Text: fmt.Sprintf("%s, after %.0f g", r.Says, room), X: room, ToX: room, Y: r.Activity})
		}
	}
	y.sheet.Assessment.Curves = append(y.sheet.Assessment.Curves, c)
}
