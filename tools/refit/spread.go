package main

import (
	"math"
	"slices"

	"levigate/calc/water"
)

// spread sums up misses.
type spread struct {
	n         int
	rms, bias float64
	max       float64 // signed: the one farthest from 0
}

// over sums up the misses at the temperatures isotherms are stated for.
func over(list []miss) spread {
	var s spread
	for _, m := range list {
		if !stated(m.Point) {
			continue
		}
		s.n++
		s.rms += m.by * m.by
		s.bias += m.by
		if math.Abs(m.by) > math.Abs(s.max) {
			s.max = m.by
		}
	}
	if s.n > 0 {
		s.rms = math.Sqrt(s.rms / float64(s.n))
		s.bias /= float64(s.n)
	}
	return s
}

// setBand writes the band's half-widths: those the plan asks for at least, or
// what holds nine in ten of all the solute's own points where that is more.
func (r *result) setBand() {
	b := r.plan.band
	r.params.Down, r.params.Up, r.params.FitLow, r.params.Grow = b.down, b.up, round(r.worked.fitLow, 3), b.grow
	var needs []float64
	for _, m := range append(slices.Clone(r.fitted), r.held...) {
		if !stated(m.Point) {
			continue
		}
		// The taper, and the growth below the range, widen a half-width of 0.
		grow := b.grow
		if m.by > 0 {
			grow /= 2 // the point lies below the curve
		}
		// The band is laid around the curve, so it is the curve's activity
		// that tapers it.
		a := m.Activity + m.by
		taper := water.HalfBand(a, 1, 0, 0)
		needs = append(needs, math.Abs(m.by)/taper-grow*math.Max(0, r.params.FitLow-a))
	}
	if len(needs) == 0 {
		return
	}
	slices.Sort(needs)
	need := math.Ceil(1000*needs[len(needs)*9/10]) / 1000
	r.params.Down, r.params.Up = math.Max(b.down, need), math.Max(b.up, need)
}
