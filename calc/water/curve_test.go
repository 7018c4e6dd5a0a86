package water

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"levigate/work/worktest"
)

func TestMethods(t *testing.T) { worktest.Run(t) }

// drawParams makes any isotherm the reference tables could hold.
func drawParams(t *rapid.T) Params {
	between := func(lo, hi float64, what string) float64 { return rapid.Float64Range(lo, hi).Draw(t, what) }
	switch rapid.SampledFrom([]Kind{KindFloryHuggins, KindPitzer, KindGAB, KindLinear, KindPoints}).Draw(t, "kind") {
	case KindFloryHuggins:
		r := between(1, 200, "R")
		return Params{Kind: KindFloryHuggins, MolarMass: between(30, 3000, "M"), R: r,
			Chi: between(-4, LargestChi(r)-0.02, "chi"), Saturation: between(0.3, 0.98, "sat")}
	case KindPitzer:
		// Salts like those of the table: the second terms small against the first.
		return Params{Kind: KindPitzer, MolarMass: between(50, 200, "M"), Beta0: between(0.03, 0.2, "b0"),
			Beta1: between(0.1, 0.35, "b1"), CPhi: between(-0.01, 0.003, "c"), MaxMolality: between(2, 5, "max"), Saturation: between(0.3, 0.98, "sat")}
	case KindGAB:
		return Params{Kind: KindGAB, M0: between(0.001, 0.2, "m0"), C: between(0.5, 100, "c"), K: between(0.3, 0.98, "k")}
	case KindLinear:
		return Params{Kind: KindLinear, AtOne: between(1e-5, 0.03, "w1"), Enthalpy: between(0, 25000, "h")}
	}
	return Params{Kind: KindPoints, At: []float64{0.2, 0.5, 0.9}, Holds: []float64{0.01, 0.012, between(0.013, 0.4, "top")}}
}

// Water and Activity undo one another, water rises with activity, and the
// slope is that of a finite difference.
func TestCurveIsAnInvertibleRisingCurve(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := NewCurve(drawParams(t), rapid.Float64Range(-15, 60).Draw(t, "celsius"))
		// As many near 0 and near 1 as between.
		a := 1 / (1 + math.Exp(rapid.Float64Range(-20, 13).Draw(t, "logit")))
		w, slope := c.Water(a)
		if !(w > 0 && slope > 0) || math.IsInf(w, 0) || math.IsInf(slope, 0) {
			t.Fatalf("a %g: water %g, slope %g", a, w, slope)
		}
		// Near 1 the activity has few digits left below it; allow for those.
		if back := c.Activity(w); math.Abs(back-a) > 1e-10*math.Min(a, 1) {
			t.Fatalf("a %.12g → %g g/g → %.12g", a, w, back)
		}
		h := 1e-4 * math.Min(a, 1-a)
		wl, _ := c.Water(a - h)
		wh, _ := c.Water(a + h)
		if !(wl < w && w < wh) {
			t.Fatalf("a %g: %g, %g, %g do not rise", a, wl, w, wh)
		}
		if 1-a < 1e-5 {
			return // a difference has no digits left here
		}
		if fd := (wh - wl) / (2 * h); c.kind != KindPoints && math.Abs(fd-slope) > 2e-4*slope {
			t.Fatalf("a %g: slope %g, by difference %g", a, slope, fd)
		}
	})
}

// Near activity 1 every solution is ideal: water is ions · 18.0153/M over
// −ln a, whatever the interaction.
func TestCurveIsIdealNearPureWater(t *testing.T) {
	for _, p := range []Params{
		{Kind: KindFloryHuggins, MolarMass: 92, R: 4, Chi: -1},
		{Kind: KindFloryHuggins, MolarMass: 1200, R: 53, Chi: 0.4},
		{Kind: KindFloryHuggins, MolarMass: 140, R: 5, Chi: -1, Ions: 2},
		{Kind: KindPitzer, MolarMass: 58.44, Beta0: 0.0765, Beta1: 0.2664, CPhi: 0.00127, MaxMolality: 6},
	} {
		c := NewCurve(p, 25)
		for _, a := range []float64{1 - 1e-7, 1 - 1e-9} {
			w, _ := c.Water(a)
			ideal := c.Ions() * MolarMassWater / p.MolarMass / -math.Log(a)
			if math.Abs(w/ideal-1) > 2e-3 {
				t.Errorf("%+v at 1 − %.0e: %g, ideal %g", p, 1-a, w, ideal)
			}
		}
	}
}

// The solute's own activity obeys the Gibbs-Duhem equation along the whole
// curve, across the end of a salt's equation too: dx = −(nw/ns) d ln a.
func TestCurveKeepsGibbsDuhem(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawParams(t)
		c := NewCurve(p, 25)
		if !c.Dissolves() {
			return
		}
		a := rapid.Float64Range(0.02, 0.995).Draw(t, "a")
		const h = 1e-5
		lo, hi := c.LnExcess(a-h), c.LnExcess(a+h)
		w, _ := c.Water(a)
		want := -w * p.MolarMass / MolarMassWater * math.Log((a+h)/(a-h))
		if got := hi - lo; math.Abs(got-want) > 3e-3*math.Abs(want)+1e-9 {
			t.Fatalf("a %g: d ln as %g, want %g", a, got, want)
		}
		if x := c.LnExcess(c.Saturation()); math.Abs(x) > 1e-9 {
			t.Fatalf("excess at saturation is %g", x)
		}
		if below := c.LnExcess(c.Saturation() - 0.01); below <= 0 {
			t.Fatalf("excess below saturation is %g", below)
		}
	})
}

// The continuation takes over with the equation's value and slope.
func TestSaltContinuesSmoothly(t *testing.T) {
	c := NewCurve(Params{Kind: KindPitzer, MolarMass: 96.06, Beta0: 0.1875, Beta1: 0.2789, CPhi: -0.01277, MaxMolality: 3}, 25)
	edge := math.Exp(-c.lMax)
	above, slopeAbove := c.Water(edge + 1e-9)
	below, slopeBelow := c.Water(edge - 1e-9)
	if math.Abs(above-below) > 1e-6 || math.Abs(slopeAbove/slopeBelow-1) > 1e-4 {
		t.Errorf("at the edge %.6f: water %g and %g, slope %g and %g", edge, above, below, slopeAbove, slopeBelow)
	}
}

func TestNoSaturationOnFile(t *testing.T) {
	c := NewCurve(Params{Kind: KindFloryHuggins, MolarMass: 92, R: 4, Chi: -1}, 25)
	if c.Saturation() != 0 || !math.IsInf(c.LnExcess(0.1), -1) {
		t.Errorf("saturation %g, excess %g", c.Saturation(), c.LnExcess(0.1))
	}
}

func TestImpossibleParametersPanic(t *testing.T) {
	for name, p := range map[string]Params{
		"two liquids":   {Kind: KindFloryHuggins, MolarMass: 92, R: 4, Chi: 2},
		"no molar mass": {Kind: KindFloryHuggins, R: 4, Chi: 0},
		"K at 1":        {Kind: KindGAB, M0: 0.1, C: 10, K: 1},
		"falling":       {Kind: KindPoints, At: []float64{0.5, 0.4}, Holds: []float64{0.1, 0.2}},
		"falling salt":  {Kind: KindPitzer, MolarMass: 60, Beta0: -0.5, MaxMolality: 6},
	} {
		t.Run(name, func(t *testing.T) {
			defer func() {
				if recover() == nil {
					t.Error("was taken")
				}
			}()
			NewCurve(p, 25)
		})
	}
}

func TestWaterDoesNotAllocate(t *testing.T) {
	c := NewCurve(Params{Kind: KindFloryHuggins, MolarMass: 92, R: 4, Chi: -1}, 25)
	if n := testing.AllocsPerRun(100, func() { c.Water(0.6) }); n != 0 {
		t.Errorf("%g allocations", n)
	}
}

func BenchmarkWater(b *testing.B) {
	for name, p := range map[string]Params{
		"flory-huggins": {Kind: KindFloryHuggins, MolarMass: 92.09, R: 4, Chi: -1},
		"pitzer":        {Kind: KindPitzer, MolarMass: 58.44, Beta0: 0.0765, Beta1: 0.2664, CPhi: 0.00127, MaxMolality: 6},
		"gab":           {Kind: KindGAB, M0: 0.08, C: 18, K: 0.71},
	} {
		b.Run(name, func(b *testing.B) {
			c := NewCurve(p, 25)
			a, sum := 0.3, 0.0
			for b.Loop() {
				w, _ := c.Water(a)
				sum += w
				if a += 0.0137; a > 0.99 {
					a -= 0.69
				}
			}
			_ = sum
		})
	}
}
