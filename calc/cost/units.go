package cost

import (
	"math"

	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// Units gives how many units of a batch can be sold:
//
//	units = ⌊(batch · yield/100 − held) / fill⌋ − out
//
// batch is what was weighed and held what stays in hose and hopper, both g; yield
// is the bulk made in % of what was weighed; fill is the bulk in one unit, g; out
// counts units rejected, tested and retained. A part of a unit is none. Never
// below zero.
func Units(batch, yield, held, fill, out float64) float64 {
	filled := (batch*yield/100 - held) / fill
	// A whole number that floating numbers miss by a hair is that number.
	if near := math.Round(filled); math.Abs(filled-near) < 1e-9*max(1, near) {
		filled = near
	}
	return max(0, math.Floor(filled)-out)
}

// MethodUnits is the method of cost.units.
var MethodUnits = work.Register(&work.Method{
	ID:    "cost.units",
	Title: "Units of a batch that can be sold",
	Kind:  work.Procedure,
	Text: "What was weighed times the making yield, less what stays in hose and hopper, over the fill, rounded down to whole units; " +
		"less those rejected, tested and retained.",
	Unit:     quantity.One,
	Accuracy: "as the making yield, the hold-up and the mean fill",
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Checks: []work.Check{
		{What: "10 kg, 97 %, 120 g held up, fill 50.3 g, 4 rejected and 3 retained", By: work.Independent, From: cite.Ref{Key: "cream-costed"}, Want: 183, Tol: 0,
			Got: func() float64 { return Units(10000, 97, 120, 50.3, 4+3) }},
		{What: "the fills come to no more than there is, and one more would not", By: work.Law, Want: 190, Tol: 0,
			Got: func() float64 {
				n := Units(10000, 97, 120, 50.3, 0)
				if n*50.3 > 9580 || (n+1)*50.3 <= 9580 {
					return math.NaN()
				}
				return n
			}},
		{What: "30 units of 0.1 g from 3 g", By: work.Law, Want: 30, Tol: 0, Got: func() float64 { return Units(3, 100, 0, 0.1, 0) }},
		{What: "less bulk than is held up", By: work.Law, Want: 0, Tol: 0, Got: func() float64 { return Units(100, 90, 120, 50, 0) }},
	},
})
