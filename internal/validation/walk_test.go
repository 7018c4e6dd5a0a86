package validation

import (
	"math"
	"testing"

	"levigate/refdata"
)

// Every isotherm on file is defined, positive and rising, invertible, and its
// slope is its slope, wherever a formula may stand.
func TestEveryIsothermRises(t *testing.T) {
	for _, iso := range refdata.Isotherms() {
		for celsius := -15.0; celsius <= 60; celsius += 5 {
			c := curve(iso.Name, celsius)
			before := 0.0
			for a := 0.02; a < 0.9901; a += 0.005 {
				w, slope := c.Water(a)
				if !(w > before && slope > 0) || math.IsInf(w, 0) {
					t.Fatalf("%s at %g °C, activity %.3f: %g g/g after %g, slope %g", iso.Name, celsius, a, w, before, slope)
				}
				if back := c.Activity(w); math.Abs(back-a) > 1e-9 {
					t.Fatalf("%s at %g °C, activity %.3f comes back as %.10f", iso.Name, celsius, a, back)
				}
				before = w
			}
			if s := c.Saturation(); s < 0 || s >= 1 {
				t.Errorf("%s at %g °C: saturation %g", iso.Name, celsius, s)
			}
		}
	}
}

// Between steps of 0.005 in activity the water held never rises 2.5-fold: a
// curve on the brink of parting into two liquids would.
func TestNoIsothermJumps(t *testing.T) {
	for _, iso := range refdata.Isotherms() {
		for _, celsius := range []float64{-15, 25, 50} {
			c := curve(iso.Name, celsius)
			before, _ := c.Water(0.02)
			for a := 0.025; a < 0.9901; a += 0.005 {
				w, _ := c.Water(a)
				if w > 2.5*before {
					t.Errorf("%s at %g °C jumps from %.4g to %.4g g/g at activity %.3f", iso.Name, celsius, before, w, a)
				}
				before = w
			}
		}
	}
}
