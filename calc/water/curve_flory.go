package water

import (
	"fmt"
	"math"
)

// The Flory-Huggins side of Curve. The unknown is φw, and steps are taken in
// u = ln φw, in which ln a is almost a straight line at both ends: slope 1
// where there is little water, 1/R where there is much.

func (c *Curve) setFlory(p Params, cold float64) {
	c.r, c.chi = p.R, p.Chi+p.Slope*cold
	if !(p.R >= 1 && p.MolarMass > 0 && c.chi < LargestChi(p.R)) {
		panic(fmt.Sprintf("water: Flory-Huggins R %g, χ %g, molar mass %g: want R ≥ 1 and χ < %.4g", p.R, c.chi, p.MolarMass, LargestChi(p.R)))
	}
	c.scale = c.ions * MolarMassWater / p.MolarMass
	c.coreA = 1 - 1/c.r
	c.floor = math.Exp(-c.coreA - math.Max(c.chi, 0))
	c.setGuess()
}

// setGuess lays a parabola through y = (1 − a)/(a/φw − a), which is 1/R at
// activity 1 and exp(−(1 − 1/R + χ)) at 0, and at a third point is worked out
// here once. Starting from it the root takes two or three steps.
func (c *Curve) setGuess() {
	const a = 0.8
	y0, y1 := math.Exp(-c.coreA-c.chi), 1/c.r
	c.guess = [3]float64{y0, y1 - y0, 0}
	c.least = math.Min(y0, y1) / 4
	phi := c.phi(a)
	y := (1 - a) / (a/phi - a)
	bend := (y - y0 - a*(y1-y0)) / (a * (1 - a))
	c.guess[1] += bend
	c.guess[2] = -bend
}

// phi solves a = φw exp((1 − 1/R)s + χs²), s = 1 − φw, by Halley's method kept
// inside a bracket. The solution is unique because χ < LargestChi. With one exp
// a step and no ln this is the inner loop of every solve.
func (c *Curve) phi(a float64) float64 {
	y := math.Max(c.guess[0]+a*(c.guess[1]+a*c.guess[2]), c.least)
	phi := a / (a + (1-a)/y)
	lo, hi := a*c.floor, 1.0
	for range 60 {
		s := 1 - phi
		off := 1 - a/(phi*math.Exp(s*(c.coreA+c.chi*s)))
		if off > 0 {
			hi = phi
		} else {
			lo = phi
		}
		// First and second derivative of ln a in u, and Halley's step for a.
		k := phi * (c.coreA + 2*c.chi*s)
		rise := 1 - k
		bend := 2*c.chi*phi*phi - k
		du := -2 * off * rise / (2*rise*rise - off*(rise*rise+bend))
		// (2 + du)/(2 − du) is exp(du) to the third order, as is the step.
		next := phi * (2 + du) / (2 - du)
		if !(next >= lo && next <= hi && math.Abs(du) < 2) {
			phi = (lo + hi) / 2
			continue
		}
		phi = next
		// The step triples the digits each time, so this one has them all.
		if math.Abs(du) <= 1e-4*s {
			break
		}
	}
	return phi
}

func (c *Curve) floryWater(a float64) (w, slope float64) {
	phi := c.phi(a)
	s := 1 - phi
	rise := 1 - phi*(c.coreA+2*c.chi*s) // d ln a/d ln φw
	w = c.scale * c.r * phi / s
	return w, w / (s * a * rise) // dw/d ln φw = w/s
}
