package weighing

import (
	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// SmallestBatch gives the smallest batch, g, in which a line of so many % can
// be weighed directly on one balance:
//
//	B = minimum weight · 100 / percent
//
// It holds and errs as the minimum weight does. Below it the line is pre-mixed,
// or weighed on a finer balance.
func SmallestBatch(percent, d, s, tolerance float64) float64 {
	return Minimum(d, s, tolerance) * 100 / percent
}

// MethodSmallestBatch is the method of weighing.smallest-batch.
var MethodSmallestBatch = work.Register(&work.Method{
	ID:    "weighing.smallest-batch",
	Title: "Smallest batch in which a line can be weighed directly",
	Kind:  work.Equation,
	Text:  "2 × max(s, 0.41 × d) / (tolerance / 100) × 100 / percent",
	Symbols: []work.Symbol{
		{Name: "percent", Means: "the line's share of the formula", Unit: quantity.Percent, Min: 1e-6, Max: 100},
		interval, repeatability, allowed,
	},
	Unit:     quantity.Gram,
	Accuracy: "as the minimum weight",
	Sources:  []cite.Ref{{Key: "usp41-2019"}},
	Checks: []work.Check{
		{What: "orange oil of the walnut polish, 0.20 % to 2 %", In: []float64{0.2, 0.01, 0.01, 2}, Want: 500, Tol: 1e-9, By: work.Independent, From: cite.Ref{Key: "oddmarrow", At: "HP-01"}},
		{What: "0.05 % on a 1 mg balance to 1 %: minimum 0.200 g", In: []float64{0.05, 0.001, 0.001, 1}, Want: 400, Tol: 1e-9, By: work.Independent},
		{What: "a formula of one line is its own minimum weight", In: []float64{100, 0.01, 0.01, 2}, Want: Minimum(0.01, 0.01, 2), Tol: 1e-12, By: work.Law},
	},
	Func:    func(in []float64) float64 { return SmallestBatch(in[0], in[1], in[2], in[3]) },
	Refuses: func(in []float64) string { return noSpread(in[1], in[2]) },
})
