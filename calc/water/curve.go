package water

import (
	"fmt"
	"math"
)

// Kind names the equation behind a curve.
type Kind uint8

// The kinds. FloryHuggins and Pitzer describe what dissolves; their water goes
// to infinity at activity 1.
const (
	KindFloryHuggins Kind = iota
	KindPitzer
	KindGAB
	KindLinear
	KindPoints
)

// Params is the data of one substance's isotherm, as plain numbers. Only the
// fields of its kind are read, and the last two lines by all.
type Params struct {
	Kind      Kind
	MolarMass float64 // g/mol, of the formula unit
	Ions      float64 // per formula unit; 0 counts as 1

	R, Chi, Slope                   float64   // Flory-Huggins: χ = Chi + Slope(1/T − 1/298.15 K); Pitzer: β0 likewise
	Beta0, Beta1, CPhi, MaxMolality float64   // Pitzer
	M0, C, K                        float64   // GAB
	AtOne, Enthalpy                 float64   // Linear: g/g at activity 1 and 25 °C; J/mol
	At, Holds                       []float64 // Points: rising; kept, not copied

	Saturation, SatSlope   float64 // activity over the saturated solution at 25 °C; d ln a/d(1/T), K
	Down, Up, FitLow, Grow float64 // band: see HalfBand
}

// Curve is one substance's isotherm at one temperature. It is a plain value,
// safe to copy and to read from many goroutines, and nothing it does
// allocates.
type Curve struct {
	kind  Kind
	scale float64 // g water per g solute at one mole of water to one of particles (or ions)
	ions  float64

	r, chi, coreA float64    // Flory-Huggins; coreA = 1 − 1/R
	guess         [3]float64 // parabola for a first guess of φw, and its floor
	least         float64
	floor         float64 // φw/a is at least this

	salt             Salt
	mMax, lMax, pMax float64 // where the salt's equation ends: molality, −ln a, d ln L/d ln m
	phiRise          float64 // mean rise of the osmotic coefficient, for a first guess

	m0, c, k  float64
	one       float64
	at, holds []float64

	sat, lnSat          float64 // saturation, and ln of the solute's activity there
	down, up, low, grow float64
}

// NewCurve makes the curve of a substance at a temperature. Parameters no
// isotherm can have are a slip in the data and panic with what is wrong.
func NewCurve(p Params, celsius float64) Curve {
	c := Curve{kind: p.Kind, ions: max(p.Ions, 1), down: p.Down, up: p.Up, low: p.FitLow, grow: p.Grow}
	cold := colder(celsius)
	switch p.Kind {
	case KindFloryHuggins:
		c.setFlory(p, cold)
	case KindPitzer:
		c.setSalt(p, cold)
	case KindGAB:
		if !(p.M0 > 0 && p.C > 0 && p.K > 0 && p.K < 1) {
			panic(fmt.Sprintf("water: GAB %g, %g, %g: want m0, C > 0 and 0 < K < 1", p.M0, p.C, p.K))
		}
		c.m0, c.c, c.k = p.M0, p.C, p.K
	case KindLinear:
		if !(p.AtOne > 0) {
			panic("water: a linear isotherm needs what is held at activity 1")
		}
		c.one = Linear(1, p.AtOne, p.Enthalpy, celsius)
	case KindPoints:
		mustRise(p.At, p.Holds)
		c.at, c.holds = p.At, p.Holds
	default:
		panic(fmt.Sprintf("water: kind %d is not known", p.Kind))
	}
	if p.Saturation > 0 && c.Dissolves() {
		// An activity over any solution stays below 1, however steep the slope.
		c.sat = math.Min(Deliquescence(p.Saturation, p.SatSlope, celsius), 0.9999)
		c.lnSat = c.lnSolute(c.sat)
	}
	return c
}

// Dissolves reports whether the curve is that of a solution: one whose water
// has no end as the activity goes to 1.
func (c *Curve) Dissolves() bool { return c.kind == KindFloryHuggins || c.kind == KindPitzer }

// Water gives the grams of water one gram of dry substance holds at activity
// a, and the slope dw/da. Activities outside 1e-9 to 1 − 1e-12 are moved to
// that end.
func (c *Curve) Water(a float64) (w, slope float64) {
	a = clampActivity(a)
	switch c.kind {
	case KindFloryHuggins:
		return c.floryWater(a)
	case KindPitzer:
		return c.saltWater(a)
	case KindGAB:
		return GAB(a, c.m0, c.c, c.k), gabSlope(a, c.m0, c.c, c.k)
	case KindLinear:
		return c.one * a, c.one
	}
	return Points(a, c.at, c.holds)
}

// Activity gives the activity at which one gram of dry substance holds w grams
// of water, at most 1.
func (c *Curve) Activity(w float64) float64 {
	if !(w > 0) {
		return 0
	}
	switch c.kind {
	case KindFloryHuggins:
		q := w / c.scale
		return FloryHuggins(q/(q+c.r), c.r, c.chi)
	case KindPitzer:
		return c.saltActivity(w)
	case KindGAB:
		return math.Min(gabActivity(w, c.m0, c.c, c.k), 1)
	case KindLinear:
		return math.Min(w/c.one, 1)
	}
	return math.Min(pointsActivity(w, c.at, c.holds), 1)
}

// Saturation is the activity over the saturated solution at this temperature;
// 0 when none is on file.
func (c *Curve) Saturation() float64 { return c.sat }

// LnExcess gives ln of the solute's own activity over that in its saturated
// solution, per formula unit, in the solution of this one solute at water
// activity a: 0 at Saturation, above 0 below it, −Inf for a substance without
// one.
func (c *Curve) LnExcess(a float64) float64 {
	if c.sat == 0 {
		return math.Inf(-1)
	}
	return c.lnSolute(a) - c.lnSat
}

// lnSolute is ln of the solute's own activity per formula unit, up to a
// constant of the substance.
func (c *Curve) lnSolute(a float64) float64 {
	a = clampActivity(a)
	if c.kind == KindPitzer {
		return c.saltLnSolute(c.molality(-math.Log(a)))
	}
	return c.ions * FloryHugginsSolute(c.phi(a), c.r, c.chi)
}

// Ions is how many particles a formula unit gives in water; 1 for a molecule.
func (c *Curve) Ions() float64 { return c.ions }

// Band gives the half-widths of the curve's 90 % band in activity, down and
// up. Powders and oils carry a relative band instead and give 0.
func (c *Curve) Band(a float64) (down, up float64) {
	if !c.Dissolves() {
		return 0, 0
	}
	return HalfBand(a, c.down, c.low, c.grow/2), HalfBand(a, c.up, c.low, c.grow)
}

// Chi is the interaction parameter at the curve's temperature; 0 for other
// forms.
func (c *Curve) Chi() float64 { return c.chi }
