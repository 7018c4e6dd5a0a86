package water

import (
	"fmt"
	"math"
)

// The Pitzer side of Curve: molality from activity, with the continuation
// beyond the equation's range. L stands for −ln a.

// setSalt lets only β0 change with temperature: that keeps the limit of a thin
// solution, and the Gibbs-Duhem equation at every temperature.
func (c *Curve) setSalt(p Params, cold float64) {
	c.salt = Salt{p.Beta0 + p.Slope*cold, p.Beta1, p.CPhi}
	c.ions = saltIons
	c.scale = 1000 / p.MolarMass // g water per g salt is scale/m
	c.mMax = p.MaxMolality
	phi, rise := c.salt.osmotic(c.mMax)
	c.lMax, c.pMax = saltIons*c.mMax*phi/molesPerKilo, 1+rise/phi
	c.phiRise = (phi - 0.92) / c.mMax
	if !(p.MolarMass > 0 && c.mMax > 0 && phi > 0 && c.pMax > 0) {
		panic(fmt.Sprintf("water: salt %+v to %g mol/kg: its activity does not fall at the end", c.salt, c.mMax))
	}
}

// molality solves 2mφ(m)/55.508 = l inside the equation's range, and follows
// the continuation beyond it.
func (c *Curve) molality(l float64) float64 {
	if l >= c.lMax {
		return c.mMax * math.Pow(l/c.lMax, 1/c.pMax)
	}
	want := l * molesPerKilo / saltIons
	// A first guess from φ ≈ 0.92 + rise·m, good to a few per cent.
	m := 2 * want / (0.92 + math.Sqrt(math.Max(0.92*0.92+4*c.phiRise*want, 0.1)))
	lo, hi := 0.0, c.mMax
	for range 60 {
		phi, rise := c.salt.osmotic(m)
		f := m*phi - want
		if f > 0 {
			hi = m
		} else {
			lo = m
		}
		dm := -f / (phi + rise)
		next := m + dm
		if !(next > lo && next < hi) {
			if math.Abs(dm) <= 1e-13*m {
				break
			}
			m = (lo + hi) / 2
			continue
		}
		m = next
		// The step doubles the digits each time, so this one has them all.
		if math.Abs(dm) <= 1e-7*m {
			break
		}
	}
	return m
}

func (c *Curve) saltWater(a float64) (w, slope float64) {
	l := -math.Log(a)
	m := c.molality(l)
	p := c.pMax
	if m < c.mMax {
		phi, rise := c.salt.osmotic(m)
		p = 1 + rise/phi
	}
	w = c.scale / m
	return w, w / (p * l * a)
}

func (c *Curve) saltActivity(w float64) float64 {
	m := c.scale / w
	if m >= c.mMax {
		return Continued(m, c.mMax, c.lMax, c.pMax)
	}
	return c.salt.Activity(m)
}

// saltLnSolute is 2 ln(m γ). In the continuation the Gibbs-Duhem equation,
// d ln as = (55.508/m) dL with L = L0(m/m0)^p, has the integral written here.
func (c *Curve) saltLnSolute(m float64) float64 {
	if m <= c.mMax {
		return saltIons * (math.Log(m) + c.salt.LnGamma(m))
	}
	x, q := math.Log(m/c.mMax), c.pMax-1
	integral := x
	if math.Abs(q*x) > 1e-12 {
		integral = math.Expm1(q*x) / q
	}
	return c.saltLnSolute(c.mMax) + molesPerKilo*c.pMax*c.lMax/c.mMax*integral
}
