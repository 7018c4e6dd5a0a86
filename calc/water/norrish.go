package water

import (
	"math"

	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// Norrish gives the water activity of a solution of one non-electrolyte from
// the mole fraction of the solute and the solute's constant:
//
//	a = (1 − xs) exp(−K xs²)
//
// K is printed with either sign; here a positive K lowers the activity. Most
// constants were fitted above activity 0.85 and mislead below: for glycerol by
// 0.03 at activity 0.4. It stands in for data where a constant is all that was
// published. Norrish 1966.
func Norrish(xs, k float64) float64 { return (1 - xs) * math.Exp(-k*xs*xs) }

var MethodNorrish = work.Register(&work.Method{
	ID:    "water.norrish",
	Title: "Water activity of a solution from Norrish's constant",
	Kind:  work.Equation,
	Text:  "(1 − xs) × exp(−k × xs^2)",
	Symbols: []work.Symbol{
		{Name: "xs", Means: "mole fraction of the solute", Unit: quantity.One, Min: 0, Max: 0.9},
		{Name: "k", Means: "Norrish's constant of the solute, natural logarithm", Unit: quantity.One, Min: -5, Max: 60},
	},
	Unit:     quantity.One,
	Accuracy: "about 0.005 above activity 0.85, not stated below",
	Sources:  []cite.Ref{{Key: "norrish1966"}},
	Checks: []work.Check{
		{What: "sucrose (K 6.47), 1.022 mol/kg, isopiestic", In: []float64{1.022 / (1.022 + molesPerKilo), 6.47}, Want: 0.98005, Tol: 3e-4, By: work.Published, From: cite.Ref{Key: "robinson1934"}},
		{What: "K = 0 is the mole fraction of water", In: []float64{0.3, 0}, Want: 0.7, Tol: 1e-15, By: work.Law},
	},
	Func: func(in []float64) float64 { return Norrish(in[0], in[1]) },
})
