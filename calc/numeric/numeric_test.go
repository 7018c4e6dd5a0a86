package numeric

import (
	"math"
	"testing"
)

func TestRoot(t *testing.T) {
	for _, c := range []struct {
		name   string
		f      func(float64) float64
		lo, hi float64
		want   float64
	}{
		{"cubic of Wallis", func(x float64) float64 { return x*x*x - 2*x - 5 }, 2, 3, 2.0945514815423265},
		{"cosine meets the diagonal", func(x float64) float64 { return x - math.Cos(x) }, 0, 1, 0.7390851332151607},
		{"falling", func(x float64) float64 { return 1 - x*x }, 0, 5, 1},
		{"steep at one end", func(x float64) float64 { return math.Log(x) + 20 }, 1e-12, 1, math.Exp(-20)},
		{"a jump", func(x float64) float64 { return math.Copysign(1, x-0.3) }, 0, 1, 0.3},
		{"at the end", func(x float64) float64 { return x }, 0, 1, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			evaluations := 0
			got, err := Root(func(x float64) float64 { evaluations++; return c.f(x) }, c.lo, c.hi, 1e-13)
			if err != nil || math.Abs(got-c.want) > 2e-13*math.Max(1, c.want) {
				t.Errorf("got %.16g, %v; want %.16g", got, err, c.want)
			}
			if evaluations > 50 {
				t.Errorf("%d evaluations; halving needs fewer", evaluations)
			}
		})
	}
	if _, err := Root(math.Exp, 0, 1, 1e-9); err == nil {
		t.Error("a function without a root was given one")
	}
}

// A straight line has a closed form; Rosenbrock's valley a known bottom.
func TestLeastSquares(t *testing.T) {
	xs, ys := []float64{0, 1, 2, 3}, []float64{1, 3, 2, 5}
	got, err := LeastSquares(func(p, out []float64) {
		for i := range xs {
			out[i] = p[0] + p[1]*xs[i] - ys[i]
		}
	}, []float64{0, 0}, 4)
	if err != nil || math.Abs(got[0]-1.1) > 1e-7 || math.Abs(got[1]-1.1) > 1e-7 {
		t.Errorf("line: %v, %v; want 1.1 and 1.1", got, err)
	}
	got, err = LeastSquares(func(p, out []float64) {
		out[0], out[1] = 10*(p[1]-p[0]*p[0]), 1-p[0]
	}, []float64{-1.2, 1}, 2)
	if err != nil || math.Abs(got[0]-1) > 1e-6 || math.Abs(got[1]-1) > 1e-6 {
		t.Errorf("valley: %v, %v; want 1 and 1", got, err)
	}
	if _, err := LeastSquares(nil, []float64{1, 2}, 1); err == nil {
		t.Error("one residual for two unknowns was taken")
	}
}
