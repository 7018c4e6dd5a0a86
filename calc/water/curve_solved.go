package water

import "math"

// solved gives what Water and LnExcess give, solving for the solution once.
func (c *Curve) solved(a float64) (w, slope, excess float64) {
	a = clampActivity(a)
	switch c.kind {
	case KindFloryHuggins:
		phi := c.phi(a)
		s := 1 - phi
		w = c.scale * c.r * phi / s
		slope = w / (s * a * (1 - phi*(c.coreA+2*c.chi*s)))
		return w, slope, c.ions*FloryHugginsSolute(phi, c.r, c.chi) - c.lnSat
	case KindPitzer:
		w, slope = c.saltWater(a)
		return w, slope, c.saltLnSolute(c.molality(-math.Log(a))) - c.lnSat
	}
	w, slope = c.Water(a)
	return w, slope, math.Inf(-1)
}
