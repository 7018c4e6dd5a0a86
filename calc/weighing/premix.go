package weighing

import (
	"fmt"
	"math"

	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// Premix gives how far the active delivered by a pre-mix may be off, as a
// fraction of it and at k = 2. active and diluent grams are weighed together
// and mixed; take grams of the mix go into the batch:
//
//	delivered = take · c,  c = active / (active + diluent)
//	(u(c)/c)² = (diluent/(active + diluent))² · ((σ/active)² + (σ/diluent)²)
//	U = 2 · √((u(c)/c)² + (σ/take)²),  σ = max(s, 0.41·d)
//
// The diluent is multiplied into its bracket, so that none at all is no special
// case. Three weighings on one balance, independent of each other, by the law of
// propagation (JCGM 100). The mix is taken to be even: what settles or does not
// dissolve does not divide so.
func Premix(active, diluent, take, d, s float64) float64 {
	whole, part := active+diluent, diluent/active
	return 2 * Spread(d, s) * math.Sqrt((part*part+1)/(whole*whole)+1/(take*take))
}

// MethodPremix is the method of weighing.premix.
var MethodPremix = work.Register(&work.Method{
	ID:    "weighing.premix",
	Title: "How far the active taken in a pre-mix may be off, as a fraction of it",
	Kind:  work.Equation,
	Text:  "2 × max(s, 0.41 × d) × sqrt(((diluent / active)^2 + 1) / (active + diluent)^2 + 1 / take^2)",
	Symbols: []work.Symbol{
		{Name: "active", Means: "what is pre-mixed", Unit: quantity.Gram, Min: 1e-6, Max: 1e6},
		{Name: "diluent", Means: "what it is pre-mixed in, out of the same formula", Unit: quantity.Gram, Min: 0, Max: 1e6},
		{Name: "take", Means: "pre-mix that goes into the batch", Unit: quantity.Gram, Min: 1e-6, Max: 1e6},
		interval, repeatability,
	},
	Unit:     quantity.One,
	Accuracy: "as the repeatability, for a mix that is even; loss on the spatula is not in it",
	Sources:  []cite.Ref{{Key: "jcgm100", At: "5.1.2"}},
	Checks: []work.Check{
		{What: "120 mg in 1080 mg, 120 mg taken, 2s = 6 mg: term by term", In: []float64{0.12, 1.08, 0.12, 0, 0.003}, Want: 0.0674537, Tol: 5e-7, By: work.Independent, From: cite.Ref{Key: "aliquot-slides"}},
		{What: "120 mg in 7380 mg, 125 mg taken, 2s = 6 mg: term by term", In: []float64{0.12, 7.38, 0.125, 0, 0.003}, Want: 0.0687407, Tol: 5e-7, By: work.Independent, From: cite.Ref{Key: "least-weighable-chapter"}},
		{What: "ten times everything is ten times better", In: []float64{1.2, 10.8, 1.2, 0, 0.003}, Want: Premix(0.12, 1.08, 0.12, 0, 0.003) / 10, Tol: 1e-12, By: work.Law},
		{What: "endless diluent and take leave the active's own weighing", In: []float64{2, 1e6, 1e6, 0.01, 0.01}, Want: Uncertainty(2, 0.01, 0.01), Tol: 1e-6, By: work.Law},
		{What: "a display that shows more coarsely than it repeats", In: []float64{1, 9, 1, 0.01, 0.001}, Want: Premix(1, 9, 1, 0, 0.0041), Tol: 1e-12, By: work.Law},
	},
	Func: func(in []float64) float64 { return Premix(in[0], in[1], in[2], in[3], in[4]) },
	Refuses: func(in []float64) string {
		const dust = 1e-12 // of sums like 0.1 + 0.2
		if whole := in[0] + in[1]; in[2] > whole*(1+dust) {
			return fmt.Sprintf("take is %g g, more than the %g g of pre-mix that there are", in[2], whole)
		}
		return noSpread(in[3], in[4])
	},
})
