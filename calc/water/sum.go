package water

import (
	"math"

	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// Holder is one substance's part in a formula's isotherm.
type Holder struct {
	Curve *Curve
	Grams float64 // dry
	// Factor scales what the curve gives: 1, or what a powder keeps of it
	// inside a polyol.
	Factor float64
	// Osmoles is moles times ions for what dissolves in the polar liquid; 0 for
	// powders and oils.
	Osmoles float64
	// Crystal says the substance may stand undissolved below its saturation.
	Crystal bool
	// Bound is the grams of water built into its crystals: held while it stands
	// undissolved, water like any other once it is dissolved.
	Bound float64
}

// Sum is a formula's isotherm at one temperature: the isotherms of what it
// holds, added.
type Sum struct {
	Holders []Holder
	// Solution scales what the dissolved solutes hold; 1 unless a reading
	// calibrates it.
	Solution float64
}

// maxHolders bounds the working space; more holders are still added, those
// beyond it as dissolved.
const maxHolders = 64

// Add is the method of the sum: the Zdanovskii-Stokes-Robinson rule for what
// is dissolved, plain addition for what is not.
var Add = work.Register(&work.Method{
	ID:    "water.sum",
	Title: "Water held by a mixture: the isotherms add",
	Kind:  work.Procedure,
	Text: "At one water activity every part holds the water it would hold alone: " +
		"W(a) = Σ mᵢ wᵢ(a), over dissolved solutes (Zdanovskii-Stokes-Robinson), powders and oils. " +
		"The activity of a formula is the a at which the sum equals the water present. " +
		"A powder in a polyol keeps a factor of its isotherm.",
	Unit:     quantity.GramPer100g,
	Accuracy: "mixing adds ±0.02 in activity, ±0.03 with honey, salts or ester blends; compared with measured mixtures in docs/validation.md",
	Sources:  []cite.Ref{{Key: "zdanovskii1936"}, {Key: "stokes1966"}},
	Checks: []work.Check{{
		What: "splitting a solute into two lines leaves its water as it was, g", By: work.Law, Want: 0, Tol: 1e-9,
		Got: splitLaw,
	}},
})

// Water is what the formula holds at activity a, in grams, and how fast that
// grows with a. The slope leaves out crystals dissolving.
func (s *Sum) Water(a float64) (grams, slope float64) {
	grams, slope, _ = s.total(a)
	return grams, slope
}

// total is Water, and whether crystals stand undissolved: then the slope says
// too little.
func (s *Sum) total(a float64) (grams, slope float64, crystals bool) {
	var w, dw [maxHolders]float64
	n, crystals := s.solve(a, &w, &dw)
	for i := range n {
		grams += w[i]
		slope += dw[i]
	}
	for i := n; i < len(s.Holders); i++ {
		x, dx := s.alone(i, a)
		grams += x
		slope += dx
	}
	return grams, slope, crystals
}

// Each writes what every holder holds at activity a and its slope, in order,
// into g and dg, and says whether crystals stand undissolved.
func (s *Sum) Each(a float64, g, dg []float64) (crystals bool) {
	var w, dw [maxHolders]float64
	n, crystals := s.solve(a, &w, &dw)
	copy(g, w[:n])
	copy(dg, dw[:n])
	for i := n; i < len(s.Holders); i++ {
		g[i], dg[i] = s.alone(i, a)
	}
	return crystals
}

// solve fills in what each of the first holders holds, crystals taken off. It
// says how many it did, and whether anything stands as crystals.
func (s *Sum) solve(a float64, w, dw *[maxHolders]float64) (n int, undissolved bool) {
	n = min(len(s.Holders), maxHolders)
	var most [maxHolders]float64
	crystals := false
	for i := range n {
		h := &s.Holders[i]
		k := h.Grams * h.Factor
		if h.Osmoles > 0 {
			k *= s.Solution
		}
		if most[i] = 1; h.Crystal && h.Osmoles > 0 && a < h.Curve.Saturation() {
			x, dx, excess := h.Curve.solved(a)
			w[i], dw[i] = k*x, k*dx
			most[i] = math.Exp(-excess / h.Curve.Ions())
			crystals = true
			continue
		}
		x, dx := h.Curve.Water(a)
		w[i], dw[i] = k*x, k*dx
	}
	if crystals {
		var dissolved [maxHolders]float64
		s.dissolve(&most, &dissolved)
		for i := range n {
			w[i] = w[i]*dissolved[i] + s.Holders[i].Bound*(1-dissolved[i])
			dw[i] *= dissolved[i]
			undissolved = undissolved || dissolved[i] < 1
		}
	}
	return n, undissolved
}

// alone is what one holder holds, taken as dissolved.
func (s *Sum) alone(i int, a float64) (w, slope float64) {
	h := &s.Holders[i]
	k := h.Grams * h.Factor
	if h.Osmoles > 0 {
		k *= s.Solution
	}
	w, slope = h.Curve.Water(a)
	return k * w, k * slope
}

const lowest, highest = 1e-6, 1 - 1e-9

// Activity is the a at which the formula holds the water given: 1 when even at
// a → 1 it holds less (free water), 0 when there is none. Crystals make the sum
// jump at saturation; the root is then the activity of the jump.
func (s *Sum) Activity(total float64) float64 {
	if total <= 0 {
		return 0
	}
	var osmoles float64
	for i := range s.Holders {
		osmoles += s.Holders[i].Osmoles * s.Solution
	}
	if osmoles == 0 {
		// Powders and oils are full at 1; what is beyond that is free water.
		if w, _ := s.Water(highest); w <= total {
			return 1
		}
	}
	// For an ideal solution ln W is a straight line in logit(a), so Newton's
	// rule in those variables starts nearly right; a bracket keeps it safe.
	a := 0.5
	if osmoles > 0 {
		nw := total / MolarMassWater
		a = nw / (nw + osmoles)
	}
	a, _, _ = s.root(lowest, highest, a, total)
	return a
}

// step goes from an activity and what is held there to where the total would
// be held, by Newton's rule in ln W and logit(a); ok is false where the sum
// gives no slope.
func step(a, w, dw, total float64) (next, logit float64, ok bool) {
	if !(w > 0 && dw > 0) {
		return 0, 0, false
	}
	logit = math.Log(total/w) * w / (dw * a * (1 - a))
	e := math.Exp(-logit) * (1 - a) / a
	return 1 / (1 + e), logit, true
}

// root solves for the total inside a bracket, from a first guess. It also
// gives what was held, and its slope, where the sum was last looked at.
func (s *Sum) root(lo, hi, a, total float64) (at, w, dw float64) {
	var crystals bool
	for i := range 200 {
		a = math.Min(math.Max(a, lo), hi)
		w, dw, crystals = s.total(a)
		switch {
		case w < total:
			lo = a
		case w > total:
			hi = a
		default:
			return a, w, dw
		}
		if hi-lo < 1e-13 {
			return a, w, dw
		}
		next, logit, ok := step(a, w, dw, total)
		switch {
		case !ok || !(next > lo && next < hi) || crystals && i > 4:
			a = (lo + hi) / 2
		case math.Abs(logit) < 1e-4 && !crystals:
			// Newton squares what is left: below 1e-8 of a.
			return next, w + dw*(next-a), dw
		default:
			a = next
		}
	}
	return a, w, dw
}

// Path gives the activity at each of a rising list of totals, each found from
// the one before.
func (s *Sum) Path(totals, at []float64) {
	var a, w, dw float64
	for i, total := range totals {
		guess, _, ok := step(a, w, dw, total)
		if i == 0 || !ok || a <= 0 || a >= highest {
			a = s.Activity(total)
			w, dw = s.Water(a)
		} else {
			a, w, dw = s.root(a, highest, guess, total)
		}
		at[i] = a
	}
}
