package cost

import (
	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// Fill gives what the raw materials in one filled unit cost:
//
//	unit = formula · 100 / yield · fill / 1000
//
// formula is money a kilogram as weighed, yield the bulk made in % of that, fill
// the bulk in one unit, g. What is lost in filling and what can't be sold is not
// in it: cost.unit counts units instead.
func Fill(formula, yield, fill float64) float64 { return Bulk(formula, yield) * fill / 1000 }

// MethodFill is the method of cost.fill.
var MethodFill = work.Register(&work.Method{
	ID:    "cost.fill",
	Title: "Raw materials in one filled unit",
	Kind:  work.Equation,
	Text:  "formula × 100 / yield × fill / 1000",
	Symbols: []work.Symbol{formulaCost, makingYield,
		{Name: "fill", Means: "bulk in one unit", Unit: quantity.Gram, Min: 0.01, Max: 1e6}},
	Unit:     quantity.Money,
	Accuracy: "as the making yield and the mean fill; filling losses are not in it",
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Checks: []work.Check{
		{What: "9.20 a kilogram, 97 %, 50.3 g: 92.00 · 50.3 / 9700, by hand", In: []float64{9.20, 97, 50.3}, Want: 0.477072, Tol: 5e-7, By: work.Independent, From: cite.Ref{Key: "cream-costed"}},
		{What: "a unit of a kilogram, nothing lost", In: []float64{5.3, 100, 1000}, Want: 5.3, Tol: 1e-12, By: work.Law},
	},
	Func: func(in []float64) float64 { return Fill(in[0], in[1], in[2]) },
})
