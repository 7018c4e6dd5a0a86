package work

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// The band of moves added in quadrature agrees with sampling the same causes.
func TestQuadratureAgainstSampling(t *testing.T) {
	causes := []*Cause{
		{Key: "a", Low: 1.8, Mid: 2, High: 2.2},
		{Key: "b", Low: 2.9, Mid: 3, High: 3.2},
		{Key: "c", Low: 0.4, Mid: 0.5, High: 0.6},
	}
	f := func(x []float64) float64 { return x[0] * x[1] / x[2] }
	mid, moves := Moves(f, causes)
	down, up := Quadrature(moves)
	if mid != 12 {
		t.Fatalf("middle %g, want 12", mid)
	}
	rng := rand.New(rand.NewPCG(3, 4))
	const z90 = 1.6449 // half-width of a 90 % interval in standard deviations
	var sample []float64
	for range 20000 {
		x := make([]float64, len(causes))
		for i, c := range causes {
			d := rng.NormFloat64() / z90
			if d < 0 {
				x[i] = c.Mid + d*(c.Mid-c.Low)
			} else {
				x[i] = c.Mid + d*(c.High-c.Mid)
			}
		}
		sample = append(sample, f(x))
	}
	slices.Sort(sample)
	low, high := sample[len(sample)/20], sample[len(sample)*19/20]
	width := high - low
	if math.Abs(mid-down-low) > width/5 || math.Abs(mid+up-high) > width/5 {
		t.Errorf("quadrature %g to %g, sampling %g to %g", mid-down, mid+up, low, high)
	}
}

func TestSetBandKeepsValueInside(t *testing.T) {
	var f Figure
	f.SetBand(0.98, []Move{{Cause: &Cause{}, Low: -0.01, High: 0.05}, {Cause: &Cause{}, Low: 0.2, High: -0.2}}, 0, 1)
	if !(f.Low <= f.Value && f.Value <= f.High && f.High == 1) {
		t.Errorf("band %g to %g around %g", f.Low, f.High, f.Value)
	}
	if f.Moves[0].Size() != 0.2 {
		t.Errorf("the largest cause comes first, got %g", f.Moves[0].Size())
	}
}

func TestAgainst(t *testing.T) {
	f := &Figure{State: Good, Value: 0.7, Low: 0.65, High: 0.75}
	for limit, want := range map[float64]Answer{0.8: Below, 0.7: CannotTell, 0.65: Above, 0.6: Above, 0.75: CannotTell} {
		if got := f.Against(limit); got != want {
			t.Errorf("against %g: %d, want %d", limit, got, want)
		}
	}
	if got := (&Figure{}).Against(1); got != NotJudged {
		t.Errorf("a missing figure is judged %d", got)
	}
}

func TestNilRecorderIsFree(t *testing.T) {
	var r *Recorder
	if n := testing.AllocsPerRun(100, func() { r.Begin("x"); r.Show("y", nil); r.End(); r.Cite() }); n != 0 {
		t.Errorf("%g allocations", n)
	}
	if r.Step() != nil || r.On() {
		t.Error("a nil recorder recorded")
	}
}
