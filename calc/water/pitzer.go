package water

import (
	"math"

	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// Constants of the equation for 1:1 salts in water at 25 °C (Pitzer & Mayorga
// 1973): the Debye-Hückel slope, the closest approach and the range of the
// second term.
const (
	pitzerA     = 0.392
	pitzerB     = 1.2
	pitzerAlpha = 2.0
	saltIons    = 2
)

// Salt is the parameter set of a 1:1 salt.
type Salt struct{ Beta0, Beta1, CPhi float64 }

// Osmotic gives the osmotic coefficient at molality m (mol/kg):
//
//	φ = 1 − A√m/(1 + 1.2√m) + m(β0 + β1 exp(−2√m)) + m²Cφ
//
// It is stated for 25 °C and up to the molality the parameters were fitted
// to, and is good there to about 0.005. At other temperatures Curve changes β0
// alone. Pitzer & Mayorga 1973, eq. 7.
func (p Salt) Osmotic(m float64) float64 {
	s := math.Sqrt(m)
	return 1 - pitzerA*s/(1+pitzerB*s) + m*(p.Beta0+p.Beta1*math.Exp(-pitzerAlpha*s)) + m*m*p.CPhi
}

// osmotic gives φ and m dφ/dm together, for the root.
func (p Salt) osmotic(m float64) (phi, rise float64) {
	s := math.Sqrt(m)
	d := 1 + pitzerB*s
	e := p.Beta1 * math.Exp(-pitzerAlpha*s)
	phi = 1 - pitzerA*s/d + m*(p.Beta0+e) + m*m*p.CPhi
	rise = -pitzerA*s/(2*d*d) + m*(p.Beta0+e*(1-pitzerAlpha*s/2)) + 2*m*m*p.CPhi
	return phi, rise
}

// Activity gives the water activity at molality m: ln a = −0.0180153·2mφ.
func (p Salt) Activity(m float64) float64 {
	return math.Exp(-saltIons * m * p.Osmotic(m) / molesPerKilo)
}

// LnGamma gives the logarithm of the mean activity coefficient:
//
//	ln γ = −A[√m/(1 + 1.2√m) + (2/1.2) ln(1 + 1.2√m)] + 2mβ0
//	       + (β1/2)[1 − (1 + 2√m − 2m) exp(−2√m)] + 1.5m²Cφ
//
// Pitzer & Mayorga 1973, eq. 8, with α = 2.
func (p Salt) LnGamma(m float64) float64 {
	s := math.Sqrt(m)
	d := 1 + pitzerB*s
	return -pitzerA*(s/d+2/pitzerB*math.Log(d)) + 2*m*p.Beta0 +
		p.Beta1/2*(1-(1+2*s-2*m)*math.Exp(-pitzerAlpha*s)) + 1.5*m*m*p.CPhi
}

var pitzerSymbols = []work.Symbol{
	{Name: "m", Means: "molality of the salt", Unit: quantity.MolePerKilo, Min: 1e-4, Max: 6.2},
	{Name: "beta0", Means: "first parameter of the salt", Unit: quantity.One, Min: -0.1, Max: 0.3},
	{Name: "beta1", Means: "second parameter of the salt", Unit: quantity.One, Min: -0.2, Max: 0.6},
	{Name: "cphi", Means: "third parameter of the salt", Unit: quantity.One, Min: -0.02, Max: 0.01},
}

var pitzerSources = []cite.Ref{{Key: "pitzer1973", At: "eq. 7 and 8, table 1"}}

// The two salts the checks use; their row in the isotherm table is the same.
var (
	sodiumChloride    = []float64{0.0765, 0.2664, 0.00127}
	potassiumChloride = []float64{0.04835, 0.2122, -0.00084}
)

func atMolality(m float64, salt []float64) []float64 { return append([]float64{m}, salt...) }

var MethodPitzer = work.Register(&work.Method{
	ID:       "water.pitzer",
	Title:    "Water activity of a solution of a 1:1 salt",
	Kind:     work.Equation,
	Text:     "exp(−2 × 0.0180153 × m × (1 − 0.392 × sqrt(m) / (1 + 1.2 × sqrt(m)) + m × (beta0 + beta1 × exp(−2 × sqrt(m))) + m^2 × cphi))",
	Symbols:  pitzerSymbols,
	Unit:     quantity.One,
	Accuracy: "about 0.001 inside the salt's range of molality, at 25 °C and, where β0 has its change with temperature, down to −15 °C",
	Sources:  pitzerSources,
	Checks: []work.Check{
		{What: "sodium chloride, 1 mol/kg", In: atMolality(1, sodiumChloride), Want: 0.9669, Tol: 3e-4, By: work.Published, From: cite.Ref{Key: "robinson1959", At: "appendix 8"}},
		{What: "sodium chloride, saturated at 6.146 mol/kg", In: atMolality(6.146, sodiumChloride), Want: 0.7529, Tol: 0.0012, By: work.FromMemory, From: cite.Ref{Key: "greenspan1977", At: "table 2, 25 °C"}},
		{What: "potassium chloride, saturated at 4.8 mol/kg", In: atMolality(4.8, potassiumChloride), Want: 0.8434, Tol: 0.0026, By: work.FromMemory, From: cite.Ref{Key: "greenspan1977", At: "table 2, 25 °C"}},
		{What: "hardly any salt: two particles a formula unit, less the Debye-Hückel pull", In: []float64{1e-4, 0, 0, 0}, Want: math.Exp(-2e-4 / molesPerKilo * (1 - 0.392*0.01)), Tol: 1e-9, By: work.Law},
	},
	Func: func(in []float64) float64 { return Salt{in[1], in[2], in[3]}.Activity(in[0]) },
})

var MethodPitzerGamma = work.Register(&work.Method{
	ID:       "water.pitzer-gamma",
	Title:    "Logarithm of the mean activity coefficient of a 1:1 salt",
	Kind:     work.Equation,
	Text:     "−0.392 × (sqrt(m) / (1 + 1.2 × sqrt(m)) + 2 / 1.2 × ln(1 + 1.2 × sqrt(m))) + 2 × m × beta0 + beta1 / 2 × (1 − (1 + 2 × sqrt(m) − 2 × m) × exp(−2 × sqrt(m))) + 1.5 × m^2 × cphi",
	Symbols:  pitzerSymbols,
	Unit:     quantity.One,
	Accuracy: "about 0.01 at 25 °C inside the salt's range of molality",
	Sources:  pitzerSources,
	Checks: []work.Check{
		{What: "sodium chloride, 1 mol/kg: ln 0.657", In: atMolality(1, sodiumChloride), Want: math.Log(0.657), Tol: 0.005, By: work.FromMemory, From: cite.Ref{Key: "robinson1959", At: "appendix 8"}},
		{What: "sodium chloride, 6 mol/kg: ln 0.986", In: atMolality(6, sodiumChloride), Want: math.Log(0.986), Tol: 0.01, By: work.FromMemory, From: cite.Ref{Key: "robinson1959", At: "appendix 8"}},
		{What: "potassium chloride, 1 mol/kg: ln 0.604", In: atMolality(1, potassiumChloride), Want: math.Log(0.604), Tol: 0.005, By: work.FromMemory, From: cite.Ref{Key: "robinson1959", At: "appendix 8"}},
		{What: "Gibbs-Duhem balance, sodium chloride at 3 mol/kg", Got: func() float64 { return saltGibbsDuhem(3) }, Want: 0, Tol: 1e-7, By: work.Law},
	},
	Func: func(in []float64) float64 { return Salt{in[1], in[2], in[3]}.LnGamma(in[0]) },
})

// saltGibbsDuhem is d(mφ) − m d(ln mγ), which nature keeps at 0.
func saltGibbsDuhem(m float64) float64 {
	const h = 1e-4
	p := Salt{sodiumChloride[0], sodiumChloride[1], sodiumChloride[2]}
	left := (m+h)*p.Osmotic(m+h) - (m-h)*p.Osmotic(m-h)
	right := math.Log((m+h)/(m-h)) + p.LnGamma(m+h) - p.LnGamma(m-h)
	return (left - m*right) / (2 * h)
}
