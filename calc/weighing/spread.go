package weighing

import "math"

// RoundingSpread is the standard deviation, in scale intervals, that rounding
// alone gives a net weight: the difference of two readings, each off by up to
// half an interval, √2 · 1/(2√3) = 0.408, printed as 0.41.
const RoundingSpread = 0.41

// Spread is the standard deviation of one net weighing, g. A balance whose
// readings agree better than its display can show is still rounded by it.
func Spread(d, s float64) float64 { return math.Max(s, RoundingSpread*d) }

// noSpread refuses a balance without an error of any kind: its minimum weight
// would come out as nothing.
func noSpread(d, s float64) string {
	if d == 0 && s == 0 {
		return "d and s are both 0; a balance has a scale interval, or a repeatability from ten weighings"
	}
	return ""
}
