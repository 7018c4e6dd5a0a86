package water

import (
	"math"

	"levigate/quantity"
	"levigate/work"
)

// Continued gives the water activity of a salt solution stronger than its
// equation is stated for: ln(−ln a) goes on as a straight line in ln m, with
// the value and the slope it has at the last molality m0.
//
//	a = exp(−L0 (m/m0)^p),  L0 = −ln a(m0),  p = d ln(−ln a)/d ln m at m0
//
// It stays between 0 and 1 and falls for ever, which a polynomial in m does
// not. It is a rule of our own and no data stand behind it: the band below the
// fitted range has to carry that.
func Continued(m, m0, l0, p float64) float64 { return math.Exp(-l0 * math.Pow(m/m0, p)) }

var MethodContinuation = work.Register(&work.Method{
	ID:    "water.salt-continuation",
	Title: "Water activity of a salt beyond its stated molality (own rule)",
	Kind:  work.Equation,
	Text:  "exp(−L0 × (m / m0)^p)",
	Symbols: []work.Symbol{
		{Name: "m", Means: "molality of the salt", Unit: quantity.MolePerKilo, Min: 1, Max: 60},
		{Name: "m0", Means: "highest molality the equation is stated for", Unit: quantity.MolePerKilo, Min: 0.5, Max: 10},
		{Name: "L0", Means: "−ln of the activity there", Unit: quantity.One, Min: 0.01, Max: 1},
		{Name: "p", Means: "d ln(−ln a)/d ln m there", Unit: quantity.One, Min: 0.5, Max: 2},
	},
	Unit:     quantity.One,
	Accuracy: "not stated: nothing was measured there; the substance's band grows below its fitted range",
	Own:      true,
	Checks: []work.Check{
		{What: "at the last stated molality it is the equation's own value", In: []float64{3, 3, 0.11, 1.2}, Want: math.Exp(-0.11), Tol: 1e-12, By: work.Law},
		{What: "slope of ln(−ln a) in ln m is p", Got: func() float64 {
			f := func(m float64) float64 { return math.Log(-math.Log(Continued(m, 3, 0.11, 1.2))) }
			return (f(5*1.001) - f(5)) / math.Log(1.001)
		}, Want: 1.2, Tol: 1e-9, By: work.Law},
	},
	Func: func(in []float64) float64 { return Continued(in[0], in[1], in[2], in[3]) },
})
