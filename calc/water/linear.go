package water

import (
	"math"

	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// Linear gives grams of water dissolved in one gram of an oil, butter or wax:
//
//	w = w1·a·exp(−(H/Rg)(1/T − 1/298.15))
//
// w1 is what it holds at activity 1 and 25 °C, H (J/mol) how that grows with
// warmth. Oils dissolve so little water that Henry's law, a straight line,
// holds over the whole range. How much differs between lots by half as much
// again; H is recalled for plant oils only.
func Linear(a, w1, h, celsius float64) float64 {
	return w1 * a * math.Exp(-h/gasConstant*colder(celsius))
}

var MethodLinear = work.Register(&work.Method{
	ID:    "water.linear",
	Title: "Water dissolved in an oil",
	Kind:  work.Equation,
	Text:  "w1 × activity × exp(−H / 8.314462618 × (1 / (t + 273.15) − 1 / 298.15))",
	Symbols: []work.Symbol{
		{Name: "activity", Means: "water activity", Unit: quantity.One, Min: 0, Max: 1},
		{Name: "w1", Means: "water held at activity 1 and 25 °C", Unit: quantity.GramPerGram, Min: 0, Max: 0.1},
		{Name: "H", Means: "heat taken up when water dissolves in it", Unit: quantity.Joule, Min: 0, Max: 40000},
		{Name: "t", Means: "temperature", Unit: quantity.Celsius, Min: -15, Max: 60},
	},
	Unit:     quantity.GramPerGram,
	Accuracy: "± 50 % of the water held for a plant oil, a factor of two for a wax",
	Sources:  []cite.Ref{{Key: "oil-water-anchors"}, {Key: "recalled"}},
	Checks: []work.Check{
		{What: "25 °C: w1 times the activity", In: []float64{0.4, 0.0012, 16000, 25}, Want: 0.00048, Tol: 1e-12, By: work.Law},
		{What: "H = Rg ln 2/(1/298.15 − 1/313.15) doubles it by 40 °C", In: []float64{0.4, 0.0012, gasConstant * math.Ln2 / (1/298.15 - 1/313.15), 40}, Want: 0.00096, Tol: 1e-12, By: work.Law},
	},
	Func: func(in []float64) float64 { return Linear(in[0], in[1], in[2], in[3]) },
})
