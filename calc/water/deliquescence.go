package water

import (
	"math"

	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// Deliquescence gives the activity over a saturated solution at a temperature:
//
//	a = a25·exp(s(1/T − 1/298.15))
//
// Below it a dry crystal stays dry; above it the crystal dissolves in the
// moisture of the air. The form is that of the handbook table of salt
// solutions, a = A exp(B/T), with a25 and s = B.
func Deliquescence(at25, slope, celsius float64) float64 {
	return at25 * math.Exp(slope*colder(celsius))
}

var MethodDeliquescence = work.Register(&work.Method{
	ID:    "water.deliquescence",
	Title: "Water activity over a saturated solution",
	Kind:  work.Equation,
	Text:  "a25 × exp(s × (1 / (t + 273.15) − 1 / 298.15))",
	Symbols: []work.Symbol{
		{Name: "a25", Means: "activity over the saturated solution at 25 °C", Unit: quantity.One, Min: 0.01, Max: 1},
		{Name: "s", Means: "change of ln a with 1/T", Unit: quantity.Kelvin, Min: -500, Max: 2000},
		{Name: "t", Means: "temperature", Unit: quantity.Celsius, Min: -15, Max: 60},
	},
	Unit:     quantity.One,
	Accuracy: "0.02 where read in a handbook, not stated where recalled",
	Sources:  []cite.Ref{{Key: "crc-humidity"}},
	Checks: []work.Check{
		{What: "potassium chloride, A 49.38 %, B 159, at 25 °C: the handbook's own 84.2 %", Got: func() float64 { return 0.4938 * math.Exp(159/roomKelvin) }, Want: 0.842, Tol: 5e-4, By: work.Published, From: cite.Ref{Key: "crc-humidity"}},
		{What: "sodium chloride at 40 °C", In: []float64{0.7529, 25, 40}, Want: 0.7468, Tol: 0.008, By: work.FromMemory, From: cite.Ref{Key: "greenspan1977", At: "table 2, 40 °C"}},
		{What: "25 °C is the value itself", In: []float64{0.7, 300, 25}, Want: 0.7, Tol: 1e-15, By: work.Law},
	},
	Func: func(in []float64) float64 { return Deliquescence(in[0], in[1], in[2]) },
})
