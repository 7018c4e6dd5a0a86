package main

import (
	"fmt"
	"math"
	"slices"

	"levigate/calc/numeric"
	"levigate/calc/water"
	"levigate/refdata"
)

// The temperatures an isotherm is stated for, and a little beyond: a freezing
// point at −15.5 °C counts.
const (
	coldest = -16.0
	hottest = 60.0
)

// chiMargin is how far below the parting into two liquids χ is kept at every
// temperature between.
const chiMargin = 0.03

// result is a finished fit.
type result struct {
	plan
	params       water.Params
	fitted, held []miss
	worked       work // where each number came from
}

// work is what a fit leaves for the table besides its parameters.
type work struct {
	fitLow, tLow, tHigh float64
	sources             []string
}

// miss is a point and how far the curve lies above it.
type miss struct {
	refdata.Point
	by float64
}

// library is the isotherms fitted so far.
type library map[string]water.Params

func (l library) curve(substance string, celsius float64) *water.Curve {
	p, ok := l[substance]
	if !ok {
		panic("refit: nothing fitted yet for " + substance)
	}
	c := water.NewCurve(p, celsius)
	return &c
}

// knows reports whether every part of a point has its isotherm.
func (l library) knows(p refdata.Point) bool {
	for _, part := range p.Parts {
		if _, ok := l[part.Substance]; !ok {
			return false
		}
	}
	return true
}

// fitAll makes every solute's isotherm.
func fitAll(points []refdata.Point) ([]result, library) {
	known := library{}
	var out []result
	for _, p := range allPlans() {
		r := p.run(points, known)
		known[p.name] = r.params
		out = append(out, r)
	}
	for i := range out { // held-out mixtures need all of them
		out[i].judge(points, known)
	}
	return out, known
}

func (p plan) run(points []refdata.Point, known library) result {
	r := result{plan: p, params: water.Params{Kind: water.KindFloryHuggins, MolarMass: p.molarMass, Ions: max(p.ions, 1)}}
	switch {
	case p.molality > 0:
		r.params.Kind = water.KindPitzer
		r.params.Beta0, r.params.Beta1, r.params.CPhi = p.salt.Beta0, p.salt.Beta1, p.salt.CPhi
		r.params.MaxMolality = p.molality
		if p.slope {
			p.saltSlope(p.chosen(points), known, &r.params)
		}
	case p.like != "":
		r.params.R = round(p.size, 4)
		r.params.Chi, r.params.Slope = known[p.like].Chi, known[p.like].Slope
		if over := chiMargin - room(r.params); over > 0 {
			r.params.Chi = round(r.params.Chi-over, 4)
		}
	default:
		p.leastSquares(p.chosen(points), known, &r.params)
	}
	return r
}

// leastSquares fits R (unless its size is given), χ and its change with 1/T.
//
// The unknowns are chosen so that χ cannot come nearer to the parting into two
// liquids than the margin, at any temperature: ln of the room χ leaves at
// 25 °C, and where between the two steepest changes still allowed its change
// with temperature lies.
func (p plan) leastSquares(points []refdata.Point, known library, out *water.Params) {
	var x []float64
	r0 := p.size
	if p.size == 0 {
		r0 = p.start
		x = append(x, math.Log(p.start-1))
	}
	x = append(x, math.Log(water.LargestChi(r0)-chiMargin))
	if p.slope {
		x = append(x, math.Log(perKelvin(coldest)/-perKelvin(hottest))) // no change at first
	}
	set := func(x []float64) water.Params {
		q := *out
		q.R = p.size
		if p.size == 0 {
			q.R, x = 1+math.Exp(math.Min(x[0], 5)), x[1:]
		}
		room := math.Exp(x[0])
		q.Chi = water.LargestChi(q.R) - chiMargin - room
		if p.slope {
			least, most := room/perKelvin(hottest), room/perKelvin(coldest)
			q.Slope = least + (most-least)/(1+math.Exp(-x[1]))
		}
		return q
	}
	trial := library{}
	for k, v := range known {
		trial[k] = v
	}
	best, err := numeric.LeastSquares(func(x, res []float64) {
		trial[p.name] = set(x)
		for i, pt := range points {
			res[i] = (isopiestic(pt, trial.curve) - pt.Activity) / p.sigma(pt)
		}
	}, x, len(points))
	if err != nil {
		panic("refit: " + p.name + ": " + err.Error())
	}
	*out = set(best)
	out.R, out.Chi, out.Slope = round(out.R, 4), round(out.Chi, 4), round(out.Slope, 1)
}

// perKelvin is 1/T − 1/298.15 K.
func perKelvin(celsius float64) float64 { return 1/(celsius+273.15) - 1/298.15 }

// saltSlope fits the change of a salt's β0 with 1/T; at 25 °C the published
// parameters stand.
func (p plan) saltSlope(points []refdata.Point, known library, out *water.Params) {
	trial := library{}
	best, err := numeric.LeastSquares(func(x, res []float64) {
		q := *out
		q.Slope = 100 * x[0]
		trial[p.name] = q
		for i, pt := range points {
			res[i] = (isopiestic(pt, trial.curve) - pt.Activity) / p.sigma(pt)
		}
	}, []float64{0}, len(points))
	if err != nil {
		panic("refit: " + p.name + ": " + err.Error())
	}
	out.Slope = round(100*best[0], 1)
}

// room is how far χ stays below the parting into two liquids over the
// temperatures an isotherm is stated for.
func room(p water.Params) float64 {
	at := func(celsius float64) float64 { return p.Chi + p.Slope*perKelvin(celsius) }
	return water.LargestChi(p.R) - math.Max(at(coldest), at(hottest))
}

// chosen lists the points a plan is fitted on.
func (p plan) chosen(points []refdata.Point) []refdata.Point {
	var out []refdata.Point
	for _, pt := range points {
		if p.takes(pt) {
			out = append(out, pt)
		}
	}
	return append(out, p.norrish.points(p)...)
}

// takes reports whether a point is fitted.
func (p plan) takes(pt refdata.Point) bool {
	if _, listed := p.fit[pt.Table]; !listed || !p.anyTemperature && p.with == "" && !stated(pt) {
		return false
	}
	if p.with != "" {
		return len(pt.Parts) == 2 && pt.Has(p.name) && pt.Has(p.with) && (p.only == nil || p.only(pt))
	}
	return pt.Of(p.name)
}

// stated reports whether a point lies where isotherms are stated to hold.
func stated(pt refdata.Point) bool { return pt.Celsius >= coldest && pt.Celsius <= hottest }

func (p plan) sigma(pt refdata.Point) float64 {
	if pt.Table == norrishTable {
		return p.norrish.sigma
	}
	return p.fit[pt.Table]
}

const norrishTable = "norrish"

// points makes points at even steps of activity from Norrish's constant.
func (n norrish) points(p plan) []refdata.Point {
	var out []refdata.Point
	if n.k == 0 {
		return nil
	}
	for a := 0.99; a > n.low-1e-9; a -= 0.02 {
		xs, err := numeric.Root(func(x float64) float64 { return water.Norrish(x, n.k) - a }, 0, 0.5, 1e-12)
		if err != nil {
			panic(fmt.Sprintf("refit: %s: %v", p.name, err))
		}
		ws := xs * p.molarMass
		share := ws / (ws + (1-xs)*water.MolarMassWater)
		out = append(out, refdata.Point{Table: norrishTable, Celsius: 25, Activity: a, Parts: []refdata.Part{{Substance: p.name, Share: share}}})
	}
	return out
}

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

func round(v float64, digits int) float64 {
	p := math.Pow(10, float64(digits))
	return math.Round(v*p) / p
}

// tables gives the sources of the points a plan is fitted on.
func (p plan) tables(points []refdata.Point) []string {
	var out []string
	for _, pt := range points {
		if p.takes(pt) && !slices.Contains(out, pt.From.Key) {
			out = append(out, pt.From.Key)
		}
	}
	return out
}
