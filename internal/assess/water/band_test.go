package water

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"levigate"
	"levigate/internal/assess/part"
	"levigate/internal/library"
	"levigate/quantity"
	"levigate/work"
)

// lib is the embedded library, shared by the tests of this package.
var lib = library.New(nil)

// sheetOf opens lines written as "material", percent pairs.
func sheetOf(t testing.TB, lines ...string) *part.Sheet {
	t.Helper()
	f := &levigate.Formula{Code: "T"}
	for i := 0; i < len(lines); i += 2 {
		f.Lines = append(f.Lines, levigate.Line{Phase: "A", Name: lines[i], Percent: quantity.MustDecimal(lines[i+1])})
	}
	for _, p := range f.Resolve(lib) {
		t.Fatal(p)
	}
	s := &part.Sheet{Assessment: &levigate.Assessment{Formula: f, Conditions: levigate.Conditions{Temperature: levigate.Room}}, Library: lib}
	s.OpenLines()
	s.Continuous = s.Classify()
	return s
}

// sample draws every cause at once and solves again: the slow version of the
// band.
func sample(y *system, draws int) (low, high float64) {
	rng := rand.New(rand.NewPCG(7, 8))
	const z90 = 1.6449
	var roots []float64
	for range draws {
		var z []float64
		residual := func(a float64) float64 {
			f := y.look([]float64{a})
			sum, i := f.all[0]-y.total, 0
			f.each(func(_ *work.Cause, lo, hi []delta, lw, hw float64) {
				if i == len(z) {
					z = append(z, rng.NormFloat64()/z90)
				}
				d, w := hi[0], hw
				if z[i] < 0 {
					d, w = lo[0], lw
				}
				sum += math.Abs(z[i]) * (d.sol + d.rest - w)
				i++
			})
			return sum
		}
		lo, hi := 0.001, 0.999
		for range 30 {
			if m := (lo + hi) / 2; residual(m) < 0 {
				lo = m
			} else {
				hi = m
			}
		}
		roots = append(roots, (lo+hi)/2)
	}
	slices.Sort(roots)
	return roots[draws/20], roots[draws*19/20]
}

// The band of the activity made from one pass over the causes agrees with
// sampling all causes at once, within a fifth of its width.
func TestActivityBandAgainstSampling(t *testing.T) {
	for name, lines := range map[string][]string{
		"polyol gel":   {"Glycerin, vegetable, 99.5 %", "21", "Purified water", "2", "Sunflower oil, high-oleic, refined", "63", "Maize starch", "6", "Kaolin, fine white", "8"},
		"honey paste":  {"Honey, runny", "30", "Glycerin, 86.5 %", "20", "Kaolin, fine white", "50"},
		"two polyols":  {"Glycerin", "30", "Propylene Glycol", "20", "Aqua", "20", "Sunflower oil, high-oleic, refined", "30"},
		"salt in gel":  {"Glycerin", "30", "Sodium Chloride", "3", "Aqua", "20", "Sunflower oil, high-oleic, refined", "47"},
		"nothing much": {"Glycerin", "40", "Aqua", "60"},
	} {
		s := sheetOf(t, lines...)
		run(s)
		f := s.Figures.Get(activityID)
		low, high := sample(build(s), 400)
		width := high - low
		if math.Abs(f.Low-low) > width/5 || math.Abs(f.High-high) > width/5 {
			t.Errorf("%s: one pass %.4f (%.4f–%.4f), sampling (%.4f–%.4f)", name, f.Value, f.Low, f.High, low, high)
		}
	}
}
