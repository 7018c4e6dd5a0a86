package validation

import (
	"math"
	"testing"

	"levigate/refdata"
	"levigate/work/worktest"
)

// Every method, with the checks this package adds.
func TestMethods(t *testing.T) { worktest.Run(t) }

// The program's sum and the slow version agree on every measured mixture.
func TestSumIsTheSlowSum(t *testing.T) {
	for _, p := range refdata.Measured() {
		if !known(p) {
			continue
		}
		slow, err := isopiestic(p)
		if err != nil {
			t.Fatalf("%s: %v", p.At, err)
		}
		if fast := summed(p); math.Abs(fast-slow) > 1e-9 {
			t.Errorf("%s: %.12f, slowly %.12f", p.At, fast, slow)
		}
	}
}

// Nine in ten of all the measured points of single solutes lie inside their
// substance's band.
func TestBandsHoldNineInTen(t *testing.T) {
	type count struct{ in, all int }
	total, each := count{}, map[string]count{}
	for _, p := range points(func(p refdata.Point) bool { return len(p.Parts) == 1 }) {
		name := p.Parts[0].Substance
		a := summed(p)
		down, up := curve(name, p.Celsius).Band(a)
		c := each[name]
		c.all++
		total.all++
		if p.Activity >= a-down && p.Activity <= a+up {
			c.in++
			total.in++
		}
		each[name] = c
	}
	for name, c := range each {
		if c.in*10 < c.all*8 && c.all >= 10 {
			t.Errorf("%s: the band holds %d of %d points", name, c.in, c.all)
		}
	}
	t.Logf("the bands hold %d of %d points", total.in, total.all)
	if total.in*10 < total.all*9 {
		t.Errorf("the bands hold %d of %d points, fewer than nine in ten", total.in, total.all)
	}
}

// From 60 to 90 % the band of glycerol is at least ± 0.015 and holds both
// recalled sources, which part by up to 0.05.
func TestGlycerolBandHoldsBothHygrostats(t *testing.T) {
	c := curve("glycerol", 25)
	inside := func(what string, share, activity float64) {
		a := c.Activity((1 - share) / share)
		down, up := c.Band(a)
		if down < 0.0149 || up < 0.0149 {
			t.Errorf("%s, %g: band −%.4f +%.4f at activity %.3f", what, share, down, up, a)
		}
		if activity < a-down || activity > a+up {
			t.Errorf("%s, %g: %.4f is outside %.4f −%.4f +%.4f", what, share, activity, a, down, up)
		}
	}
	for _, p := range points(func(p refdata.Point) bool { return p.Table == "miner1953-hygrostat" }) {
		if p.Parts[0].Share >= 0.6 {
			inside("hygrostat table", p.Parts[0].Share, p.Activity)
		}
	}
	table, err := refdata.Open("measured/glycerol-index")
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range table.Rows {
		inside("hygrostat equation", number(r, "mass_fraction"), hygrostatEquation(number(r, "index"), 25))
	}
	down, up := c.Band(0.3)
	t.Logf("at activity 0.30: −%.3f +%.3f", down, up)
	if up <= down {
		t.Error("the band of glycerol should reach farther up than down at low activity")
	}
}

// What nobody measured never comes with a narrow band.
func TestUnmeasuredIsWide(t *testing.T) {
	for _, iso := range refdata.Isotherms() {
		if iso.Basis == "measured" || iso.Relative > 0 {
			continue
		}
		if iso.Down < 0.03 || iso.Up < 0.03 {
			t.Errorf("%s, basis %s: −%.3f +%.3f", iso.Name, iso.Basis, iso.Down, iso.Up)
		}
	}
}
