package cost

import (
	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// Unit gives what the raw materials of a batch cost by the unit that can be
// sold:
//
//	unit = formula · batch / 1000 / units
//
// formula is money a kilogram as weighed, batch what was weighed, g, and units
// those left to sell after rejects, tests and retained samples: what they hold is
// paid by the others. Exact for what was counted.
func Unit(formula, batch, units float64) float64 { return formula * batch / 1000 / units }

// MethodUnit is the method of cost.unit.
var MethodUnit = work.Register(&work.Method{
	ID:       "cost.unit",
	Title:    "Raw materials by the unit that can be sold",
	Kind:     work.Equation,
	Text:     "formula × batch / 1000 / units",
	Symbols:  []work.Symbol{formulaCost, batchMass, unitCount},
	Unit:     quantity.Money,
	Accuracy: "exact for what was weighed and counted; pack, labour, tests and overhead are not in it",
	Sources:  []cite.Ref{{Key: "maker-batch"}},
	Checks: []work.Check{
		{What: "a batch of 17.00 makes 12 bars", In: []float64{17, 1000, 12}, Want: 1.42, Tol: 5e-3, By: work.Published, From: cite.Ref{Key: "maker-batch"}},
		{What: "10 kg at 9.20 in 183 tubes: 92.00 / 183, by hand", In: []float64{9.20, 10000, 183}, Want: 0.502732, Tol: 5e-7, By: work.Independent, From: cite.Ref{Key: "cream-costed"}},
		{What: "all units together cost the batch", In: []float64{9.20, 10000, 183}, Want: 92.0 / 183, Tol: 1e-12, By: work.Law},
	},
	Func: func(in []float64) float64 { return Unit(in[0], in[1], in[2]) },
})
