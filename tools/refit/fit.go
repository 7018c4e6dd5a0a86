package main

import (
	"math"

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
			res[i] = p.beyond(pt, isopiestic(pt, trial.curve)-pt.Activity) / p.sigma(pt)
		}
	}, x, len(points))
	if err != nil {
		panic("refit: " + p.name + ": " + err.Error())
	}
	*out = set(best)
	out.R, out.Chi, out.Slope = round(out.R, 4), round(out.Chi, 4), round(out.Slope, 1)
}

// beyond is the part of a miss that lies outside what the point's table is
// allowed.
func (p plan) beyond(pt refdata.Point, miss float64) float64 {
	free := p.within[pt.Table]
	return math.Copysign(math.Max(0, math.Abs(miss)-free), miss)
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

func round(v float64, digits int) float64 {
	p := math.Pow(10, float64(digits))
	return math.Round(v*p) / p
}
