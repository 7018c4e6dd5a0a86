package main

import (
	"math"
	"slices"

	"levigate/calc/water"
	"levigate/refdata"
)

// judge measures the finished curve on the points it was fitted on and on
// those kept aside.
func (r *result) judge(points []refdata.Point, known library) {
	w := &r.worked
	w.fitLow, w.tLow, w.tHigh = 1, math.Inf(1), math.Inf(-1)
	for _, pt := range points {
		takes := r.takes(pt)
		if r.doubt != nil && r.doubt(pt) {
			continue
		}
		if !takes && !(slices.Contains(r.aside, pt.Table) && pt.Has(r.name) && len(pt.Parts) <= 2 && known.knows(pt)) && !(pt.Of(r.name) && r.fit[pt.Table] > 0) {
			continue
		}
		m := miss{pt, isopiestic(pt, known.curve) - pt.Activity}
		if key := pt.From.Key; !slices.Contains(w.sources, key) {
			w.sources = append(w.sources, key)
		}
		if takes {
			r.fitted = append(r.fitted, m)
		} else {
			r.held = append(r.held, m)
		}
		// A salt's parameters were fitted by others; what stands here of it
		// still shows how far down they were seen to hold.
		if takes || r.molality > 0 {
			w.fitLow = math.Min(w.fitLow, pt.Activity)
			w.tLow, w.tHigh = math.Min(w.tLow, pt.Celsius), math.Max(w.tHigh, pt.Celsius)
		}
	}
	if math.IsInf(w.tLow, 1) {
		w.tLow, w.tHigh = 25, 25
	}
	if r.molality > 0 {
		c := water.NewCurve(r.params, 25)
		w.fitLow = c.Activity(1000 / (r.molality * r.molarMass))
	}
	if r.norrish.k != 0 {
		w.fitLow = math.Min(w.fitLow, r.norrish.low)
	}
	if r.band.low > 0 {
		w.fitLow = r.band.low
	}
	if r.like != "" {
		for _, p := range allPlans() {
			if p.name == r.like {
				r.cites = append(slices.Clone(r.cites), p.tables(points)...)
			}
		}
	}
	for _, c := range r.cites {
		if !slices.Contains(w.sources, c) {
			w.sources = append(w.sources, c)
		}
	}
}
