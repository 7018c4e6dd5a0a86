package water

import (
	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// Raoult gives the water activity of an ideal solution, the mole fraction of
// water, from w grams of water to one gram of solute of molar mass m (g/mol)
// that gives so many ions.
//
// Polyols and sugars lie below it: glycerol by 0.09 near activity 0.4. It is
// here as a yardstick and for split tests, never for a figure.
func Raoult(w, m, ions float64) float64 {
	n := w / MolarMassWater
	return n / (n + ions/m)
}

var MethodRaoult = work.Register(&work.Method{
	ID:    "water.raoult",
	Title: "Water activity of an ideal solution",
	Kind:  work.Equation,
	Text:  "w / 18.0153 / (w / 18.0153 + ions / m)",
	Symbols: []work.Symbol{
		{Name: "w", Means: "water to one gram of solute", Unit: quantity.GramPerGram, Min: 0.01, Max: 1000},
		{Name: "m", Means: "molar mass of the solute", Unit: quantity.GramPerMole, Min: 20, Max: 10000},
		{Name: "ions", Means: "ions to a formula unit, 1 for a molecule", Unit: quantity.One, Min: 1, Max: 3},
	},
	Unit:     quantity.One,
	Accuracy: "a yardstick: up to 0.1 above a real polyol solution",
	Sources:  []cite.Ref{{Key: "robinson1959"}},
	Checks: []work.Check{
		{What: "70 g water and 30 g glycerol, worked by hand", In: []float64{7.0 / 3, 92.094, 1}, Want: 0.92265, Tol: 1e-5, By: work.Independent},
		{What: "10 g water and 60 g glycerol, the split without solids", In: []float64{1.0 / 6, 92.0938, 1}, Want: 0.46004, Tol: 1e-5, By: work.Independent, From: cite.Ref{Key: "oddmarrow"}},
		{What: "as many moles of each", In: []float64{18.0153 / 92, 92, 1}, Want: 0.5, Tol: 1e-12, By: work.Law},
	},
	Func: func(in []float64) float64 { return Raoult(in[0], in[1], in[2]) },
})
