package water

import (
	"math"

	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// Saturate says how much of a crystalline solute dissolves in a mixture.
//
// At one water activity, mixing binary solutions that already have that
// activity moves no water, so only the solutes' own entropy of mixing acts: a
// solute's activity in the mixture is its share y of all dissolved particles,
// raised to its number of ions, times its activity in its binary solution at
// the same water activity. It stays dissolved while that lies below its
// activity at saturation:
//
//	y ≤ exp(−E/ν),  E = ln(activity in the binary solution at a / at saturation)
//
// For a solute alone y = 1 and the rule is its own saturation. Two salts or
// sugars together dissolve below either's own deliquescence, as measured.
var Saturate = work.Register(&work.Method{
	ID:    "water.saturation",
	Title: "Crystals in a mixture: own rule after ideal isopiestic mixing",
	Kind:  work.Procedure,
	Own:   true,
	Text: "A solute delivered as crystals stays dissolved at water activity a while its share of the dissolved " +
		"particles is at most exp(−E/ν), with E the logarithm of its own activity in the binary solution at a over that at saturation, ν its ions. " +
		"What is beyond that share stays as crystals and holds no water, so the sum may jump where crystals dissolve.",
	Unit: quantity.One,
	Accuracy: "deliquescence of NaCl with glucose: within 0.01 of the measured value at equal masses, 0.05 too high at twice the glucose; " +
		"two salts that share an ion come out up to 0.07 too low",
	Sources: []cite.Ref{{Key: "stokes1966"}, {Key: "estillore2017"}},
	Checks: []work.Check{
		{What: "a solute alone dissolves at its own saturation", By: work.Law, Want: 0, Tol: 1e-9, Got: aloneLaw},
	},
})

// dissolve works out which part of each holder is dissolved, from the largest
// share of the particles each may have.
func (s *Sum) dissolve(most, dissolved *[maxHolders]float64) {
	n := min(len(s.Holders), maxHolders)
	for i := range n {
		dissolved[i] = 1
	}
	// Take the saturated solutes one round at a time: each that is beyond its
	// share leaves fewer particles, which may push others beyond theirs.
	var saturated [maxHolders]bool
	var total float64
	for {
		var held, free float64
		for i := range s.Holders {
			if i < n && saturated[i] {
				held += most[i]
			} else {
				free += s.Holders[i].Osmoles
			}
		}
		total = 0
		if held < 1 {
			total = free / (1 - held)
		}
		changed := false
		for i := range n {
			if h := &s.Holders[i]; !saturated[i] && most[i] < 1 && h.Osmoles > most[i]*total {
				saturated[i], changed = true, true
			}
		}
		if !changed {
			break
		}
	}
	for i := range n {
		if saturated[i] {
			dissolved[i] = most[i] * total / s.Holders[i].Osmoles
		}
	}
}

// Jump says whether the sum jumps at a, because crystals dissolve there all at
// once, and what it holds on either side.
func (s *Sum) Jump(a float64) (low, high float64, jumps bool) {
	low, _ = s.Water(a - hair)
	high, _ = s.Water(a + hair)
	return low, high, high-low > 1e-5*high
}

// hair is how near to a jump its two sides are looked at.
const hair = 1e-8

// Undissolved is the grams of each holder that stand as crystals when the sum
// holds the total at activity a. Where the sum jumps at a, the crystals of the
// lower side are dissolved as far as the total reaches into the jump.
func (s *Sum) Undissolved(a, total float64) []float64 {
	below, above := s.crystals(a-hair), s.crystals(a+hair)
	share := 1.0
	if low, high, jumps := s.Jump(a); jumps {
		share = math.Min(1, math.Max(0, (total-low)/(high-low)))
	}
	for i := range below {
		below[i] += share * (above[i] - below[i])
	}
	return below
}

// crystals is the grams of each holder beyond what dissolves at a.
func (s *Sum) crystals(a float64) []float64 {
	out := make([]float64, len(s.Holders))
	var w, dw [maxHolders]float64
	n, _ := s.solve(a, &w, &dw)
	for i := range n {
		h := &s.Holders[i]
		if !h.Crystal || h.Osmoles == 0 || h.Grams == 0 {
			continue
		}
		// w is what the dissolved part holds and what the rest has built in.
		if full, _ := s.alone(i, a); full > h.Bound {
			out[i] = h.Grams * (1 - math.Min(1, (w[i]-h.Bound)/(full-h.Bound)))
		}
	}
	return out
}
