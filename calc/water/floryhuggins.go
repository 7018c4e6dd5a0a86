package water

import (
	"math"

	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// FloryHuggins gives the water activity of a solution of one substance.
//
//	ln a = ln φw + (1 − 1/R)(1 − φw) + χ(1 − φw)²
//
// phiW is water's share of the volume, r the size of a particle over that of a
// water molecule, chi the interaction (negative when the substance holds water
// more tightly than its size explains).
//
// It holds for any φw above 0 and is one phase while χ < (1 + 1/√R)²/2. With
// both parameters fitted it follows polyols and sugars to about 0.002 in
// activity. Flory 1942; Huggins 1942.
func FloryHuggins(phiW, r, chi float64) float64 {
	s := 1 - phiW
	return phiW * math.Exp((1-1/r)*s+chi*s*s)
}

// FloryHugginsSolute gives ln of the solute's own activity, the pure liquid
// solute being 1:
//
//	ln as = ln φs + (1 − R)φw + Rχφw²
//
// It is what the Gibbs-Duhem equation makes of FloryHuggins, in closed form,
// so a saturation needs no integral.
func FloryHugginsSolute(phiW, r, chi float64) float64 {
	return math.Log(1-phiW) + (1-r)*phiW + r*chi*phiW*phiW
}

// LargestChi is the interaction at which a solution starts to part into two
// liquids and its isotherm stops rising.
//
// The slope d ln a/d ln φw = 1 − φw(1 − 1/R) − 2χφw(1 − φw) is lowest where
// φw = 1/√(2χ), and there it is 0 when √(2χ) = 1 + 1/√R.
func LargestChi(r float64) float64 {
	s := 1 + 1/math.Sqrt(r)
	return s * s / 2
}

// PhiW gives water's share of the volume from grams of water to one gram of
// dry substance of molar mass m (g/mol of particles) and size r.
func PhiW(w, m, r float64) float64 {
	q := w * m / MolarMassWater
	return q / (q + r)
}

var floryHugginsSymbols = []work.Symbol{
	{Name: "phiW", Means: "water's share of the volume", Unit: quantity.One, Min: 1e-4, Max: 0.9999},
	{Name: "R", Means: "size of a particle of solute over that of a water molecule", Unit: quantity.One, Min: 1, Max: 400},
	{Name: "chi", Means: "interaction parameter at the temperature", Unit: quantity.One, Min: -6, Max: 1},
}

var floryHugginsSources = []cite.Ref{{Key: "flory1942"}}

var MethodFloryHuggins = work.Register(&work.Method{
	ID:       "water.flory-huggins",
	Title:    "Water activity of a solution of one substance",
	Kind:     work.Equation,
	Text:     "phiW × exp((1 − 1/R) × (1 − phiW) + chi × (1 − phiW)^2)",
	Symbols:  floryHugginsSymbols,
	Unit:     quantity.One,
	Accuracy: "that of the fit: about 0.002 where a substance is well measured; see each substance's row",
	Sources:  floryHugginsSources,
	Checks: []work.Check{
		{What: "particles of water's own size, no interaction: the mole fraction", In: []float64{0.37, 1, 0}, Want: 0.37, Tol: 1e-12, By: work.Law},
		{What: "hardly any solute: 1 − φs/R", In: []float64{0.9999, 5, -0.7}, Want: 1 - 1e-4/5, Tol: 2e-8, By: work.Law},
	},
	Func: func(in []float64) float64 { return FloryHuggins(in[0], in[1], in[2]) },
})

var MethodFloryHugginsSolute = work.Register(&work.Method{
	ID:       "water.flory-huggins-solute",
	Title:    "Logarithm of a solute's own activity in water",
	Kind:     work.Equation,
	Text:     "ln(1 − phiW) + (1 − R) × phiW + R × chi × phiW^2",
	Symbols:  floryHugginsSymbols,
	Unit:     quantity.One,
	Accuracy: "that of the water activities it is made from, several times over: it is used for saturation only",
	Sources:  floryHugginsSources,
	Checks: []work.Check{
		{What: "particles of water's own size, no interaction: ln of the mole fraction", In: []float64{0.37, 1, 0}, Want: math.Log(0.63), Tol: 1e-12, By: work.Law},
		{What: "Gibbs-Duhem balance at φw 0.4, R 4, χ −0.5", Got: func() float64 { return gibbsDuhem(0.4, 4, -0.5) }, Want: 0, Tol: 1e-7, By: work.Law},
		{What: "Gibbs-Duhem balance at φw 0.8, R 11, χ 0.3", Got: func() float64 { return gibbsDuhem(0.8, 11, 0.3) }, Want: 0, Tol: 1e-7, By: work.Law},
	},
	Func: func(in []float64) float64 { return FloryHugginsSolute(in[0], in[1], in[2]) },
})

// gibbsDuhem is nw d(ln aw) + ns d(ln as) along φw, which nature keeps at 0.
func gibbsDuhem(phiW, r, chi float64) float64 {
	const h = 1e-5
	w := math.Log(FloryHuggins(phiW+h, r, chi)) - math.Log(FloryHuggins(phiW-h, r, chi))
	s := FloryHugginsSolute(phiW+h, r, chi) - FloryHugginsSolute(phiW-h, r, chi)
	return (phiW*w + (1-phiW)/r*s) / (2 * h)
}
