package wire

import "math"

// share is a percentage or grams per 100 g without the dust that adding
// floating numbers leaves behind: nine decimals, finer than any formula is.
func share(v float64) *float64 { return number(math.Round(v*1e9) / 1e9) }

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
