package cost

import (
	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// Yield gives how much of what was weighed is sold, by what the units declare:
//
//	yield = units · declared / batch · 100
//
// units can be sold, declared is the mass on their label and batch what was
// weighed, both g; in %. It is the product of making, filling and packing and
// hides which of them lost: keep those apart as well. What is filled above the
// declared mass counts as lost.
func Yield(units, declared, batch float64) float64 { return units * declared / batch * 100 }

// MethodYield is the method of cost.yield.
var MethodYield = work.Register(&work.Method{
	ID:    "cost.yield",
	Title: "Yield of a batch by declared mass",
	Kind:  work.Equation,
	Text:  "units × declared / batch × 100",
	Symbols: []work.Symbol{unitCount,
		{Name: "declared", Means: "mass declared on one unit", Unit: quantity.Gram, Min: 0.1, Max: 1e6}, batchMass},
	Unit:     quantity.Percent,
	Accuracy: "exact for what was counted",
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Checks: []work.Check{
		{What: "183 tubes of 50 g from 10 kg", In: []float64{183, 50, 10000}, Want: 91.50, Tol: 1e-9, By: work.Independent, From: cite.Ref{Key: "cream-costed"}},
		{What: "everything sold", In: []float64{200, 50, 10000}, Want: 100, Tol: 1e-12, By: work.Law},
	},
	Func: func(in []float64) float64 { return Yield(in[0], in[1], in[2]) },
})
