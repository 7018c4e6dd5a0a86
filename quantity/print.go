package quantity

import (
	"math"
	"strconv"
)

// Fixed writes v with n decimals and never a negative zero.
func Fixed(v float64, n int) string {
	s := strconv.FormatFloat(v, 'f', n, 64)
	if len(s) > 1 && s[0] == '-' {
		if f, err := strconv.ParseFloat(s, 64); err == nil && f == 0 {
			return s[1:]
		}
	}
	return s
}

// Significant writes v to n significant digits without an exponent where the
// number is of everyday size.
func Significant(v float64, n int) string {
	if v == 0 {
		return "0"
	}
	if a := math.Abs(v); a >= 1e-4 && a < 1e9 {
		d := n - 1 - int(math.Floor(math.Log10(a)))
		return strconv.FormatFloat(v, 'f', clamp(d, 0, 12), 64)
	}
	return strconv.FormatFloat(v, 'g', n, 64)
}

// decimalsOf says how many decimals a person reads a figure of this unit in.
func decimalsOf(u Unit) (min, max int) {
	switch u {
	case One: // activities and volume fractions: two, three only inside a working
		return 2, 2
	case GramPerML:
		return 2, 3
	case Money, MoneyPerKilo: // a hundredth of a cent still counts in a small tube
		return 2, 4
	case Percent, GramPer100g, MLPer100g:
		return 1, 2
	}
	return 0, 3
}

// Shown writes a figure and its band with the same number of decimals.
func Shown(v, low, high float64, u Unit) (value, lo, hi string) {
	min, max := decimalsOf(u)
	if min == 0 && low == high {
		v3 := Significant(v, 3)
		return v3, v3, v3
	}
	n := max
	if half := (high - low) / 2; half > 0 {
		n = int(math.Ceil(-math.Log10(half)))
		if a := math.Abs(v); a > 0 && a < 1 && math.Min(v-low, high-v) < 0.55*a {
			// A long upper tail would leave one digit of a small value whose lower
			// end is known better than that.
			n = int(math.Max(float64(n), math.Ceil(1-math.Log10(a))))
		}
		n = clamp(n, min, max)
	}
	return Fixed(v, n), Fixed(low, n), Fixed(high, n)
}

func clamp(n, min, max int) int {
	if n < min {
		return min
	}
	if n > max {
		return max
	}
	return n
}
