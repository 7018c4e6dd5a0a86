package weighing

import (
	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// Uncertainty gives how far one net weighing may be off, as a fraction of the
// mass and at k = 2:
//
//	U = 2 · max(s, 0.41·d) / mass
//
// It is the minimum weight turned round, and holds where that does.
func Uncertainty(mass, d, s float64) float64 { return 2 * Spread(d, s) / mass }

// MethodUncertainty is the method of weighing.uncertainty.
var MethodUncertainty = work.Register(&work.Method{
	ID:    "weighing.uncertainty",
	Title: "How far a net weight may be off, as a fraction of it",
	Kind:  work.Equation,
	Text:  "2 × max(s, 0.41 × d) / mass",
	Symbols: []work.Symbol{
		{Name: "mass", Means: "net weight", Unit: quantity.Gram, Min: 1e-6, Max: 1e9},
		interval, repeatability,
	},
	Unit:     quantity.One,
	Accuracy: "as the repeatability; the balance's adjustment, levelling and the vessel's place on the pan are not in it",
	Sources:  []cite.Ref{{Key: "usp41-2019"}},
	Checks: []work.Check{
		{What: "0.25 g on a 0.01 g balance", In: []float64{0.25, 0.01, 0.01}, Want: 0.08, Tol: 1e-12, By: work.Independent},
		{What: "0.25 g on a 1 mg balance", In: []float64{0.25, 0.001, 0.001}, Want: 0.008, Tol: 1e-12, By: work.Independent},
		{What: "50 mg with a sensitivity requirement of 6 mg", In: []float64{0.05, 0, 0.003}, Want: 0.12, Tol: 1e-12, By: work.Independent, From: cite.Ref{Key: "least-weighable-unc", At: "exercise"}},
		{What: "190 mg with a sensitivity requirement of 6 mg", In: []float64{0.19, 0, 0.003}, Want: 0.03158, Tol: 5e-6, By: work.Independent, From: cite.Ref{Key: "aliquot-slides", At: "exercise"}},
		{What: "1900 mg with a sensitivity requirement of 6 mg", In: []float64{1.9, 0, 0.003}, Want: 0.003158, Tol: 5e-7, By: work.Independent, From: cite.Ref{Key: "aliquot-slides", At: "exercise"}},
		{What: "the minimum weight is off by the tolerance", In: []float64{Minimum(0.01, 0.01, 2), 0.01, 0.01}, Want: 0.02, Tol: 1e-12, By: work.Law},
	},
	Func:    func(in []float64) float64 { return Uncertainty(in[0], in[1], in[2]) },
	Refuses: func(in []float64) string { return noSpread(in[1], in[2]) },
})
