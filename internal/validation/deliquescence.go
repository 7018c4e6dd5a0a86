package validation

import (
	"levigate/calc/water"
	"levigate/cite"
	"levigate/refdata"
	"levigate/work"
)

// Mixed particles of salt and glucose were seen to dissolve whole at these
// activities. The second is missed by more than its own error: the binary
// curve of glucose is carried far below what it was fitted to there.
var _ = work.Prove(water.Saturate,
	work.Check{What: "sodium chloride with as much glucose by mass dissolves whole", Got: func() float64 { return wholeAt(10, 10) },
		Want: 0.720, Tol: 0.02, By: work.Published, From: cite.Ref{Key: "estillore2017"}},
	work.Check{What: "sodium chloride with twice as much glucose dissolves whole", Got: func() float64 { return wholeAt(10, 20) },
		Want: 0.673, Tol: 0.06, By: work.Published, From: cite.Ref{Key: "estillore2017"}},
)

// wholeAt is the lowest activity at which neither salt nor glucose stands as
// crystals.
func wholeAt(salt, glucose float64) float64 {
	s := water.Sum{Solution: 1}
	for name, grams := range map[string]float64{"sodium chloride": salt, "glucose": glucose} {
		iso, ok := refdata.Isotherm(name)
		if !ok {
			panic("validation: no isotherm for " + name)
		}
		s.Holders = append(s.Holders, water.Holder{Curve: curve(name, 25), Grams: grams, Factor: 1,
			Osmoles: grams / iso.MolarMass * iso.Ions, Crystal: true})
	}
	lo, hi := 0.5, 0.999
	for range 40 {
		mid := (lo + hi) / 2
		left := 0.0
		for _, g := range s.Undissolved(mid, 0) {
			left += g
		}
		if left > 1e-9 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return hi
}
