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
	down, up := make([]float64, len(grid)), make([]float64, len(grid))
	f.each(func(_ *work.Cause, low, high []delta, lw, hw float64) {
		for p := range grid {
			l, h := f.holdsMore(p, low, lw), f.holdsMore(p, high, hw)
			down[p] += square(math.Min(math.Min(l, h), 0))
			up[p] += square(math.Max(math.Max(l, h), 0))
		}
	})
	c := levigate.Curve{ID: "water.isotherm",
		X: levigate.Axis{Title: "Water activity", Unit: "1", Values: grid},
		Y: levigate.Axis{Title: "Water held", Unit: "g/100 g", Values: append([]float64(nil), f.all[:len(grid)]...)},
	}
	for p := range grid {
		c.Low = append(c.Low, math.Max(0, f.all[p]-math.Sqrt(down[p])))
		c.High = append(c.High, f.all[p]+math.Sqrt(up[p]))
	}
	c.Marks = append(c.Marks, levigate.CurveMark{ID: "formula", Text: "this formula", X: a, ToX: a, Y: y.total})
	for _, r := range refdata.Criteria() {
		w, _ := y.sum.Water(r.Activity)
		c.Marks = append(c.Marks, levigate.CurveMark{ID: "limit/" + r.Figure, Text: r.Says, X: r.Activity, ToX: r.Activity, Y: w})
	}
	y.sheet.Assessment.Curves = append(y.sheet.Assessment.Curves, c)
}

func square(x float64) float64 { return x * x }

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
	down, up := make([]float64, len(grid)), make([]float64, len(grid))
	f.each(func(_ *work.Cause, low, high []delta, lw, hw float64) {
		for p := range grid {
			l, h := f.shift(p, low, lw), f.shift(p, high, hw)
			down[p] += square(math.Min(math.Min(l, h), 0))
			up[p] += square(math.Max(math.Max(l, h), 0))
		}
	})
	c := levigate.Curve{ID: "water.rinse",
		X: levigate.Axis{Title: "Water added", Unit: "g/100 g", Values: grid},
		Y: levigate.Axis{Title: "Water activity", Unit: "1", Values: at},
	}
	for p := range grid {
		c.Low = append(c.Low, math.Max(0, at[p]-math.Sqrt(down[p])))
		c.High = append(c.High, math.Min(1, at[p]+math.Sqrt(up[p])))
	}
	for _, r := range refdata.Criteria() {
		w, _ := y.sum.Water(r.Activity)
		if room := w - y.total; room > 0 && room < grid[len(grid)-1] {
			c.Marks = append(c.Marks, levigate.CurveMark{ID: "limit/" + r.Figure, Text: fmt.Sprintf("%s, after %.0f g", r.Says, room), X: room, ToX: room, Y: r.Activity})
		}
	}
	y.sheet.Assessment.Curves = append(y.sheet.Assessment.Curves, c)
}
