package water

import (
	"levigate/quantity"
	"levigate/work"
)

// Points gives grams of water on one gram of dry powder, and the slope, by
// straight lines between points (at, holds) that rise, from (0, 0) on; beyond
// the last point the last line goes on. It is what an isotherm gets that no
// equation fits: the step of a charcoal, or two recalled figures for a
// pigment.
func Points(a float64, at, holds []float64) (w, slope float64) {
	x0, y0 := 0.0, 0.0
	for i, x1 := range at {
		y1 := holds[i]
		slope = (y1 - y0) / (x1 - x0)
		if a <= x1 || i == len(at)-1 {
			break
		}
		x0, y0 = x1, y1
	}
	return y0 + slope*(a-x0), slope
}

// pointsActivity turns Points round.
func pointsActivity(w float64, at, holds []float64) float64 {
	x0, y0, slope := 0.0, 0.0, 0.0
	for i, x1 := range at {
		slope = (holds[i] - y0) / (x1 - x0)
		if w <= holds[i] || i == len(at)-1 {
			break
		}
		x0, y0 = x1, holds[i]
	}
	return x0 + (w-y0)/slope
}

// mustRise refuses points that do not rise: such a curve has no inverse.
func mustRise(at, holds []float64) {
	if len(at) == 0 || len(at) != len(holds) {
		panic("water: points need activities and as many holdings")
	}
	x, y := 0.0, 0.0
	for i := range at {
		if !(at[i] > x && at[i] <= 1 && holds[i] > y) {
			panic("water: points must rise from (0, 0)")
		}
		x, y = at[i], holds[i]
	}
}

var charcoalAt, charcoalHolds = []float64{0.4, 0.5, 0.6}, []float64{0.05, 0.12, 0.22}

func charcoal(a float64) func() float64 {
	return func() float64 { w, _ := Points(a, charcoalAt, charcoalHolds); return w }
}

var MethodPoints = work.Register(&work.Method{
	ID:       "water.points",
	Title:    "Water on a dry powder from single points, straight lines between (own rule)",
	Kind:     work.Procedure,
	Text:     "Straight lines run from no water at activity 0 through the points; beyond the last point the last line goes on to activity 1.",
	Unit:     quantity.GramPerGram,
	Accuracy: "that of the points, which are recalled for most powders: ± 30 % and more",
	Own:      true,
	Checks: []work.Check{
		{What: "through a point", Got: charcoal(0.5), Want: 0.12, Tol: 1e-15, By: work.Law},
		{What: "half-way between two", Got: charcoal(0.45), Want: 0.085, Tol: 1e-15, By: work.Law},
		{What: "half-way to the first", Got: charcoal(0.2), Want: 0.025, Tol: 1e-15, By: work.Law},
		{What: "the last line goes on", Got: charcoal(0.7), Want: 0.32, Tol: 1e-15, By: work.Law},
		{What: "turned round", Got: func() float64 { return pointsActivity(0.17, charcoalAt, charcoalHolds) }, Want: 0.55, Tol: 1e-15, By: work.Law},
	},
})
