package water

import (
	"math"

	"levigate/quantity"
	"levigate/work"
)

// bandTaper is how far below activity 1 a band begins to close: near pure
// water every isotherm is known, whatever is dissolved.
const bandTaper = 0.25

// HalfBand gives half the width of an isotherm's 90 % band in activity:
//
//	(half + grow·max(0, low − a))·min(1, (1 − a)/0.25)
//
// half is its width where the substance was fitted, low where that ends, grow
// how much wider it gets for every unit of activity below. The upper side grows
// by the whole of it, the lower by half: where glycerol's sources part below
// the isopiestic points, the others lie above the curve, and an activity
// taken too low is the error that does harm.
func HalfBand(a, half, low, grow float64) float64 {
	return (half + grow*math.Max(0, low-a)) * math.Min(1, (1-a)/bandTaper)
}

var MethodBand = work.Register(&work.Method{
	ID:    "water.isotherm-band",
	Title: "Half-width of a substance's activity band (own rule)",
	Kind:  work.Equation,
	Text:  "(half + grow × max(0, low − a)) × min(1, (1 − a) / 0.25)",
	Symbols: []work.Symbol{
		{Name: "a", Means: "water activity", Unit: quantity.One, Min: 0, Max: 1},
		{Name: "half", Means: "half-width inside the fitted range", Unit: quantity.One, Min: 0, Max: 0.2},
		{Name: "low", Means: "lowest activity fitted", Unit: quantity.One, Min: 0, Max: 1},
		{Name: "grow", Means: "growth of the half-width per unit of activity below", Unit: quantity.One, Min: 0, Max: 1},
	},
	Unit:     quantity.One,
	Accuracy: "set so that it holds nine in ten of the measured points, over all substances together",
	Own:      true,
	Checks: []work.Check{
		{What: "inside the fitted range it is the half-width", In: []float64{0.6, 0.02, 0.4, 0.2}, Want: 0.02, Tol: 1e-15, By: work.Law},
		{What: "pure water is known", In: []float64{1, 0.02, 0.4, 0.2}, Want: 0, Tol: 0, By: work.Law},
		{What: "0.1 below the range", In: []float64{0.3, 0.02, 0.4, 0.2}, Want: 0.04, Tol: 1e-15, By: work.Law},
	},
	Func: func(in []float64) float64 { return HalfBand(in[0], in[1], in[2], in[3]) },
})
