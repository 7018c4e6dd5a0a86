package water

import (
	"math"

	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// GAB gives grams of water on one gram of dry powder at activity a:
//
//	w = m0·C·K·a / ((1 − K·a)(1 − K·a + C·K·a))
//
// m0 is the water of one full layer (g/g), c how much tighter that layer holds
// than the next, k how nearly the next are liquid water. It holds to activity
// 0.85 or 0.9 and errs low above; with constants read for the very lot it is
// good to 2 % of the water held, with those of a namesake to 20 %. Guggenheim,
// Anderson and de Boer, as reviewed by van den Berg & Bruin 1981.
func GAB(a, m0, c, k float64) float64 {
	u := k * a
	return m0 * c * u / ((1 - u) * (1 - u + c*u))
}

// gabSlope is dw/da.
func gabSlope(a, m0, c, k float64) float64 {
	u := k * a
	d := (1 - u) * (1 - u + c*u)
	return k * m0 * c * (1 + (c-1)*u*u) / (d * d)
}

// gabActivity turns GAB round: with u = K·a the equation is the quadratic
// (c − 1)u² + (c·m0/w − c + 2)u − 1 = 0, which has one root above 0.
func gabActivity(w, m0, c, k float64) float64 {
	if w <= 0 {
		return 0
	}
	b := c*m0/w - c + 2
	// Written with the root below the line: exact for c = 1 and for small w.
	return 2 / (b + math.Sqrt(b*b+4*(c-1))) / k
}

// sunCellulose are the constants of a microcrystalline cellulose (Sun 2008).
func sunCellulose(a float64) []float64 { return []float64{0.0355, 14.42, 0.814, a} }

func sunCheck(a, want float64) work.Check {
	return work.Check{What: "microcrystalline cellulose at activity " + quantity.Significant(a, 3),
		In: sunCellulose(a), Want: want, Tol: 6e-6, By: work.Published, From: cite.Ref{Key: "sun2008", At: "constants and points"}}
}

var MethodGAB = work.Register(&work.Method{
	ID:    "water.gab",
	Title: "Water on a dry powder (GAB isotherm)",
	Kind:  work.Equation,
	Text:  "m0 × c × k × activity / ((1 − k × activity) × (1 − k × activity + c × k × activity))",
	Symbols: []work.Symbol{
		{Name: "m0", Means: "water of one full layer", Unit: quantity.GramPerGram, Min: 1e-4, Max: 1},
		{Name: "c", Means: "hold of the first layer over the next", Unit: quantity.One, Min: 1, Max: 200},
		{Name: "k", Means: "hold of the next layers over liquid water", Unit: quantity.One, Min: 0.3, Max: 0.99},
		{Name: "activity", Means: "water activity", Unit: quantity.One, Min: 0, Max: 1},
	},
	Unit:     quantity.GramPerGram,
	Accuracy: "2 % of the water held with constants of the very lot, 20 % with those of a namesake; low above activity 0.9",
	Sources:  []cite.Ref{{Key: "anderson1946"}},
	Checks: []work.Check{
		sunCheck(0.113, 0.02321), sunCheck(0.216, 0.03251), sunCheck(0.382, 0.04466), sunCheck(0.520, 0.05624),
		sunCheck(0.575, 0.06186), sunCheck(0.750, 0.08728), sunCheck(0.843, 0.10965),
		{What: "one full layer is reached at a = 1/(K(1 + √C))", In: []float64{0.0355, 14.42, 0.814, 1 / (0.814 * (1 + math.Sqrt(14.42)))}, Want: 0.0355, Tol: 1e-12, By: work.Independent},
		{What: "C = 1 is m0·K·a/(1 − K·a)", In: []float64{0.05, 1, 0.8, 0.5}, Want: 0.05 * 0.4 / 0.6, Tol: 1e-12, By: work.Law},
		{What: "no vapour, no water", In: sunCellulose(0), Want: 0, Tol: 0, By: work.Law},
	},
	Func: func(in []float64) float64 { return GAB(in[3], in[0], in[1], in[2]) },
})
