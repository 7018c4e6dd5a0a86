package cost

import (
	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// Bulk gives what the raw materials in a kilogram of bulk cost:
//
//	bulk = formula · 100 / yield
//
// formula is the cost of a kilogram as weighed and yield the bulk made, in % of
// what was weighed. What stays on wall and tools was paid for. Exact; the yield is
// the maker's own reading, and no table stands in for it.
func Bulk(formula, yield float64) float64 { return formula * 100 / yield }

// MethodBulk is the method of cost.bulk.
var MethodBulk = work.Register(&work.Method{
	ID:       "cost.bulk",
	Title:    "Raw materials in a kilogram of bulk",
	Kind:     work.Equation,
	Text:     "formula × 100 / yield",
	Symbols:  []work.Symbol{formulaCost, makingYield},
	Unit:     quantity.MoneyPerKilo,
	Accuracy: "as the making yield, which is to be weighed: it differs by batch size and product",
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Checks: []work.Check{
		{What: "9.20 a kilogram, 3 % lost in making: 92.00 for 9.700 kg", In: []float64{9.20, 97}, Want: 92.0 / 9.7, Tol: 1e-12, By: work.Independent, From: cite.Ref{Key: "cream-costed"}},
		{What: "nothing lost", In: []float64{5.3, 100}, Want: 5.3, Tol: 1e-12, By: work.Law},
		{What: "half lost", In: []float64{5.3, 50}, Want: 10.6, Tol: 1e-12, By: work.Law},
	},
	Func: func(in []float64) float64 { return Bulk(in[0], in[1]) },
})
