package weighing

import (
	"math"
	"math/big"

	"levigate"
)

// choice is how one line is weighed.
type choice struct {
	*scale
	can      levigate.CanWeigh
	portions int
}

// choose takes the finest balance that carries the mass and keeps its minimum
// weight; where none carries it, the one that needs the fewest portions; where
// none keeps it, the one that comes nearest.
func choose(scales []*scale, mass *big.Rat) choice {
	c := choice{can: levigate.Nothing, portions: 1}
	if mass.Sign() == 0 {
		c.scale = best(scales, func(*scale) bool { return true })
		return c
	}
	c.can = levigate.Directly
	if c.scale = best(scales, func(s *scale) bool { return s.room.Cmp(mass) >= 0 && s.minimum.Cmp(mass) <= 0 }); c.scale != nil {
		return c
	}
	for _, s := range scales {
		n := portions(s, mass)
		if n > 1 && s.keeps(mass, n) && (c.scale == nil || n < c.portions || n == c.portions && s.finer(c.scale)) {
			c.scale, c.portions = s, n
		}
	}
	if c.scale != nil {
		c.can = levigate.InPortions
		return c
	}
	c.can = levigate.TooLittle
	c.scale = best(scales, func(s *scale) bool { return s.room.Cmp(mass) >= 0 })
	if c.scale == nil {
		c.scale = best(scales, func(*scale) bool { return true })
		c.portions = portions(c.scale, mass)
	}
	return c
}

// best is the finest balance that will do; nil when none does.
func best(scales []*scale, will func(*scale) bool) *scale {
	var out *scale
	for _, s := range scales {
		if will(s) && (out == nil || s.finer(out)) {
			out = s
		}
	}
	return out
}

// portions is how many times the balance must be filled.
func portions(s *scale, mass *big.Rat) int {
	n := ceiling(new(big.Rat).Quo(mass, s.room), big.NewRat(1, 1)).Num()
	if !n.IsInt64() || n.Int64() > math.MaxInt32 {
		return math.MaxInt32
	}
	return max(1, int(n.Int64()))
}

// keeps reports whether n portions together stay within the tolerance: their
// repeatabilities add in squares, so the minimum weight grows with √n.
func (s *scale) keeps(mass *big.Rat, n int) bool {
	least := times(s.minimum, s.minimum)
	return times(mass, mass).Cmp(least.Mul(least, big.NewRat(int64(n), 1))) >= 0
}

func sqrt(n int) float64 { return math.Sqrt(float64(n)) }
