package weighing

import (
	"math"
	"math/rand/v2"
	"testing"

	"levigate/work/worktest"
)

func TestMethods(t *testing.T) { worktest.Run(t) }

// The law of propagation against ten thousand weighings of a pre-mix.
func TestPremixAgainstSampling(t *testing.T) {
	rng := rand.New(rand.NewPCG(41, 2019))
	const active, diluent, take, s = 1.5, 6.0, 1.5, 0.01
	var sum, squares float64
	const n = 10000
	for range n {
		weigh := func(g float64) float64 { return g + s*rng.NormFloat64() }
		a, v := weigh(active), weigh(diluent)
		got := weigh(take)*a/(a+v)/(take*active/(active+diluent)) - 1
		sum += got
		squares += got * got
	}
	sampled := 2 * math.Sqrt(squares/n-sum*sum/n/n)
	if want := Premix(active, diluent, take, 0.01, s); math.Abs(sampled-want) > 0.03*want {
		t.Errorf("sampled %g, by propagation %g", sampled, want)
	}
}
