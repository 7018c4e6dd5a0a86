package wire

import "math"

// number is a number that JSON can hold, or null. The calculations are meant
// to give finite numbers only; if one ever does not, a reader finds null and
// never a file it cannot read.
func number(v float64) *float64 {
	if !finite(v) {
		return nil
	}
	return &v
}

func numbers(vs []float64) []*float64 {
	out := make([]*float64, len(vs))
	for i, v := range vs {
		out[i] = number(v)
	}
	return out
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
