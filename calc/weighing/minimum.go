package weighing

import (
	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// Minimum gives the smallest net weight, g, that a balance weighs to within a
// tolerance:
//
//	m = 2 · max(s, 0.41·d) / (tolerance / 100)
//
// s is the repeatability and d the scale interval, both g; the tolerance is in
// % of the weight. Net counts: a heavy vessel does not help. It holds where
// repeatability is what errs, at small loads; the balance's adjustment and
// levelling are not in it. USP <41>.
func Minimum(d, s, tolerance float64) float64 { return 2 * Spread(d, s) / (tolerance / 100) }

// The symbols that the methods of a balance share.
var (
	interval      = work.Symbol{Name: "d", Means: "scale interval", Unit: quantity.Gram, Min: 0, Max: 1000}
	repeatability = work.Symbol{Name: "s", Means: "repeatability, a standard deviation; 0 when only rounding counts", Unit: quantity.Gram, Min: 0, Max: 1000}
	allowed       = work.Symbol{Name: "tolerance", Means: "by how much the line may be off, in % of it", Unit: quantity.Percent, Min: 0.001, Max: 100}
)

// floorCheck is the least a balance can weigh when it repeats better than it
// shows: 2 · 0.41 intervals over the tolerance, worked by hand.
func floorCheck(d, tolerance, want float64) work.Check {
	return work.Check{What: "floor of a " + quantity.Significant(d, 1) + " g display at " + quantity.Significant(tolerance, 2) + " %",
		In: []float64{d, 0, tolerance}, Want: want, Tol: 1e-9, By: work.Independent, From: cite.Ref{Key: "usp41-floor"}}
}

// leastCheck is a textbook's least weighable quantity. Its sensitivity
// requirement stands where twice the repeatability does here.
func leastCheck(requirement, tolerance, want, tol float64, key string) work.Check {
	return work.Check{What: "sensitivity requirement " + quantity.Significant(1000*requirement, 2) + " mg, " + quantity.Significant(tolerance, 1) + " % allowed",
		In: []float64{0, requirement / 2, tolerance}, Want: want, Tol: tol, By: work.Published, From: cite.Ref{Key: key}}
}

// MethodMinimum is the method of weighing.minimum.
var MethodMinimum = work.Register(&work.Method{
	ID:       "weighing.minimum",
	Title:    "Minimum weight of a balance",
	Kind:     work.Equation,
	Text:     "2 × max(s, 0.41 × d) / (tolerance / 100)",
	Symbols:  []work.Symbol{interval, repeatability, allowed},
	Unit:     quantity.Gram,
	Accuracy: "as the repeatability: from ten weighings it is itself good to about a quarter; from a maker's sheet it is what a quiet bench gives",
	Sources:  []cite.Ref{{Key: "usp41-2019"}, {Key: "usp41-floor"}},
	Checks: []work.Check{
		{What: "s 0.15 mg to 0.10 %", In: []float64{0.0001, 0.00015, 0.1}, Want: 0.3, Tol: 1e-12, By: work.Published, From: cite.Ref{Key: "usp41-2019", At: "worked example"}},
		{What: "820 intervals to 0.10 %", In: []float64{0.0001, 0, 0.1}, Want: 0.082, Tol: 1e-12, By: work.Published, From: cite.Ref{Key: "usp41-summary"}},
		leastCheck(0.006, 5, 0.120, 1e-12, "least-weighable-unc"), leastCheck(0.006, 1, 0.600, 1e-12, "least-weighable-chapter"),
		leastCheck(0.010, 5, 0.200, 1e-12, "least-weighable-page"), leastCheck(0.0025, 3, 0.0833, 5e-5, "least-weighable-page"),
		{What: "s below what the display shows", In: []float64{0.01, 0.002, 1}, Want: 0.82, Tol: 1e-12, By: work.Independent},
		{What: "s of one interval", In: []float64{0.01, 0.01, 1}, Want: 2, Tol: 1e-12, By: work.Independent},
		floorCheck(0.0001, 0.5, 0.0164), floorCheck(0.0001, 1, 0.0082), floorCheck(0.0001, 2, 0.0041), floorCheck(0.0001, 5, 0.00164),
		floorCheck(0.001, 0.1, 0.82), floorCheck(0.001, 1, 0.082), floorCheck(0.01, 0.1, 8.2), floorCheck(0.01, 0.5, 1.64),
		floorCheck(0.01, 2, 0.41), floorCheck(0.01, 5, 0.164), floorCheck(0.1, 1, 8.2), floorCheck(0.1, 2, 4.1), floorCheck(1, 1, 82), floorCheck(1, 5, 16.4),
	},
	Func:    func(in []float64) float64 { return Minimum(in[0], in[1], in[2]) },
	Refuses: func(in []float64) string { return noSpread(in[0], in[1]) },
})
