package water

import (
	"math"
	"testing"
)

func TestSumWithoutSolutesIsFreeWater(t *testing.T) {
	s := Sum{Solution: 1, Holders: []Holder{holderOf(Params{Kind: KindGAB, M0: 0.08, C: 18, K: 0.71, MolarMass: 1}, 20, false)}}
	s.Holders[0].Osmoles = 0
	if a := s.Activity(50); a != 1 {
		t.Errorf("50 g of water on 20 g of starch: activity %g, want 1", a)
	}
	if a := s.Activity(0); a != 0 {
		t.Errorf("no water: activity %g, want 0", a)
	}
}

func TestActivityIsTheRoot(t *testing.T) {
	s := Sum{Solution: 1, Holders: []Holder{
		holderOf(lawSugar, 30, false), holderOf(lawSalt, 2, false),
		{Curve: ptr(NewCurve(Params{Kind: KindGAB, M0: 0.08, C: 18, K: 0.71}, 25)), Grams: 10, Factor: 0.8},
		{Curve: ptr(NewCurve(Params{Kind: KindLinear, AtOne: 0.0012}, 25)), Grams: 40, Factor: 1},
	}}
	last := 0.0
	for w := 0.5; w < 400; w *= 1.4 {
		a := s.Activity(w)
		if got, _ := s.Water(a); math.Abs(got-w) > 1e-7*w {
			t.Errorf("%g g: the sum at %g gives %g", w, a, got)
		}
		if a <= last {
			t.Errorf("%g g: activity %g does not rise above %g", w, a, last)
		}
		last = a
	}
}

// Two crystals together dissolve below either's own saturation, and the
// activity never falls as water is added.
func TestCrystalsTogether(t *testing.T) {
	s := Sum{Solution: 1, Holders: []Holder{holderOf(lawSugar, 30, true), holderOf(lawSalt, 30, true)}}
	first := s.Activity(0.5)
	if first >= lawSalt.Saturation {
		t.Errorf("mutual deliquescence %g is not below the salt's own %g", first, lawSalt.Saturation)
	}
	last := 0.0
	for w := 0.5; w < 300; w += 0.5 {
		a := s.Activity(w)
		if a < last-1e-9 {
			t.Fatalf("%g g: activity falls from %g to %g", w, last, a)
		}
		last = a
	}
	left := s.Undissolved(first, 0.5)
	if left[0]+left[1] <= 0 {
		t.Errorf("at %g both should hold crystals back, got %v", first, left)
	}
}

func ptr(c Curve) *Curve { return &c }

func BenchmarkActivityTenSolutes(b *testing.B) {
	s := Sum{Solution: 1}
	for i := range 10 {
		p := lawSugar
		p.R += float64(i) * 0.7
		s.Holders = append(s.Holders, holderOf(p, 3, false))
	}
	b.ReportAllocs()
	for b.Loop() {
		s.Activity(12)
	}
}

// Twice the salt that the water dissolves leaves half of it as crystals.
func TestUndissolvedInTheJump(t *testing.T) {
	s := Sum{Solution: 1, Holders: []Holder{holderOf(lawSalt, 10, true)}}
	w, _ := s.Holders[0].Curve.Water(lawSalt.Saturation)
	total := 5 * w
	if left := s.Undissolved(s.Activity(total), total); math.Abs(left[0]-5) > 1e-3 {
		t.Errorf("%g g of salt left, want 5", left[0])
	}
	if left := s.Undissolved(s.Activity(30*w), 30*w); left[0] != 0 {
		t.Errorf("%g g of salt left in plenty of water", left[0])
	}
}

// With crystals about, the root is still a root, inside and outside the jumps.
func TestRootWithCrystals(t *testing.T) {
	polyol := holderOf(Params{Kind: KindFloryHuggins, MolarMass: 92, R: 4.5, Chi: 0.27}, 20, false)
	s := Sum{Solution: 1, Holders: []Holder{polyol, holderOf(lawSugar, 40, true), holderOf(lawSalt, 20, true)}}
	for w := 1.0; w < 100; w += 0.7 {
		a := s.Activity(w)
		low, _ := s.Water(a - 1e-9)
		high, _ := s.Water(a + 1e-9)
		if low > w*(1+1e-6) || high < w*(1-1e-6) {
			t.Errorf("%.1f g: the sum goes from %.6f to %.6f at %.9f", w, low, high, a)
		}
	}
}

// Crystal water is no water until its crystals dissolve: a hydrate in a dry
// oil leaves the rest as dry as it was, and dissolved it is the anhydrous
// solute with that much more water.
func TestCrystalWater(t *testing.T) {
	hydrate := holderOf(lawSugar, 20, true)
	hydrate.Bound = 2
	starch := Holder{Curve: ptr(NewCurve(Params{Kind: KindGAB, M0: 0.08, C: 18, K: 0.71}, 25)), Grams: 10, Factor: 1}
	dry := Sum{Solution: 1, Holders: []Holder{hydrate, starch}}
	plain := Sum{Solution: 1, Holders: []Holder{holderOf(lawSugar, 20, true), starch}}
	if a, b := dry.Activity(2+0.5), plain.Activity(0.5); math.Abs(a-b) > 1e-6 {
		t.Errorf("undissolved: %.6f with crystal water, %.6f without", a, b)
	}
	if a, b := dry.Activity(40), plain.Activity(40); math.Abs(a-b) > 1e-9 {
		t.Errorf("dissolved: %.9f with crystal water, %.9f without", a, b)
	}
}
