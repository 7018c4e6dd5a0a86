package weighing

import (
	"math/big"

	"levigate"
	"levigate/calc/weighing"
	"levigate/quantity"
)

// scale is one balance in exact numbers.
type scale struct {
	*levigate.Balance
	index    int
	interval *big.Rat
	spread   *big.Rat // max(s, 0.41·d)
	room     *big.Rat // capacity less the vessel
	minimum  *big.Rat // at the tolerance asked for
}

// roundingSpread is calc/weighing's 0.41, exactly.
var roundingSpread = exactFloat(weighing.RoundingSpread)

func scaleOf(b *levigate.Balance, index int, tolerance *big.Rat) *scale {
	s := &scale{Balance: b, index: index, interval: b.Interval.Exact(), room: b.Room().Exact()}
	s.spread = times(roundingSpread, s.interval)
	if stated := b.Repeatability.Exact(); stated.Cmp(s.spread) > 0 {
		s.spread = stated
	}
	// 2 · spread / (tolerance / 100), as calc/weighing.Minimum; a test holds the
	// two together.
	s.minimum = times(s.spread, big.NewRat(200, 1))
	s.minimum.Quo(s.minimum, tolerance)
	return s
}

// shownMinimum is the minimum weight rounded up, to one place more than the
// balance shows.
func (s *scale) shownMinimum() quantity.Decimal {
	step := new(big.Rat).Quo(s.interval, big.NewRat(10, 1))
	if step.Cmp(smallest) < 0 {
		step = smallest
	}
	return decimal(ceiling(s.minimum, step))
}

// uncertainty is how far a net weight may be off, as a fraction, when it is
// weighed in portions: each brings its own repeatability.
func (s *scale) uncertainty(mass *big.Rat, portions int) float64 {
	if mass.Sign() == 0 {
		return 0
	}
	m, _ := mass.Float64()
	return weighing.Uncertainty(m, s.Interval.Float(), s.Repeatability.Float()) * sqrt(portions)
}

// finer reports whether s is to be preferred to t where both will do: it repeats
// better; or as well and shows more; or shows as much and carries more.
func (s *scale) finer(t *scale) bool {
	if c := s.spread.Cmp(t.spread); c != 0 {
		return c < 0
	}
	if c := s.interval.Cmp(t.interval); c != 0 {
		return c < 0
	}
	return s.room.Cmp(t.room) > 0
}
