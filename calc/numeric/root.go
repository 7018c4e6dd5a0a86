package numeric

import (
	"fmt"
	"math"
)

// Root finds x between lo and hi where f is 0, to within tol in x. f must have
// different signs at the two ends. It is the ITP method (Oliveira & Takahashi
// 2020, ACM Trans. Math. Softw. 47, 5): on a smooth f almost as quick as the
// secant, on any f at most one step slower than halving.
func Root(f func(x float64) float64, lo, hi, tol float64) (float64, error) {
	flo, fhi := f(lo), f(hi)
	switch {
	case flo == 0:
		return lo, nil
	case fhi == 0:
		return hi, nil
	case !(flo*fhi < 0):
		return math.NaN(), fmt.Errorf("numeric: no change of sign between %g (%g) and %g (%g)", lo, flo, hi, fhi)
	}
	sign := 1.0
	if flo > 0 {
		sign, flo, fhi = -1, -flo, -fhi
	}
	// The three constants are those the authors recommend: k1 = 0.2/width,
	// k2 = 2, one step of slack.
	k1 := 0.2 / (hi - lo)
	steps := math.Ceil(math.Log2((hi-lo)/(2*tol))) + 1
	for j := 0.0; hi-lo > 2*tol && j < 200; j++ {
		mid := (lo + hi) / 2
		radius := math.Max(tol*math.Pow(2, steps-j)-(hi-lo)/2, 0)
		trunc := k1 * (hi - lo) * (hi - lo)
		secant := (fhi*lo - flo*hi) / (fhi - flo)
		toMid := math.Copysign(1, mid-secant)
		x := mid
		if trunc <= math.Abs(mid-secant) {
			x = secant + toMid*trunc
		}
		if math.Abs(x-mid) > radius {
			x = mid - toMid*radius
		}
		switch y := sign * f(x); {
		case y > 0:
			hi, fhi = x, y
		case y < 0:
			lo, flo = x, y
		case y == 0:
			return x, nil
		default:
			return math.NaN(), fmt.Errorf("numeric: the function is not a number at %g", x)
		}
	}
	return (lo + hi) / 2, nil
}
