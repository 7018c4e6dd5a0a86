package weighing

import (
	"math/big"

	"levigate"
	"levigate/quantity"
)

// row is one line being worked out.
type row struct {
	line   int
	how    choice
	mass   *big.Rat // as the percentage says
	step   *big.Rat // it is rounded to
	target *big.Rat // to weigh
	lent   *big.Rat // of it, in pre-mixes proposed so far; nil for none
	notes  []string

	limited bool // weighed heavy, it would pass a limit on file
	capped  bool // brings what a limit on file is about, and the formula keeps it
}

// free is what pre-mixes have left of a row.
func (r *row) free() *big.Rat {
	if r.lent == nil {
		return r.target
	}
	return new(big.Rat).Sub(r.target, r.lent)
}

// round gives a row its step and its target. A line that can be weighed is
// rounded to what its balance shows. One that can't is written finely enough
// that rounding neither moves it by more than the tolerance nor lifts it to the
// minimum weight it has not got.
func (r *row) round(tolerance *big.Rat) {
	r.step = r.how.interval
	r.target = half(r.mass, r.step)
	for r.how.can == levigate.TooLittle && r.step.Cmp(smallest) > 0 {
		if !r.moved(tolerance) && r.target.Cmp(r.how.minimum) < 0 {
			return
		}
		r.refine()
		r.target = half(r.mass, r.step)
	}
}

// down rounds a row down, to a finer step where its own would move a line that
// can't be weighed anyway by more than the tolerance.
func (r *row) down(tolerance *big.Rat) {
	r.target = floor(r.mass, r.step)
	for r.how.can == levigate.TooLittle && r.step.Cmp(smallest) > 0 && r.moved(tolerance) {
		r.refine()
		r.target = floor(r.mass, r.step)
	}
}

// moved reports whether rounding takes a row further than the tolerance.
func (r *row) moved(tolerance *big.Rat) bool {
	off := new(big.Rat).Sub(r.target, r.mass)
	most := times(r.mass, tolerance)
	return off.Abs(off).Cmp(most.Quo(most, hundred)) > 0
}

// refine takes the next finer step, down to the last place a decimal keeps.
func (r *row) refine() {
	r.step = new(big.Rat).Quo(r.step, big.NewRat(10, 1))
	if r.step.Cmp(smallest) < 0 {
		r.step = smallest
	}
}

// absorb lets one row take up what rounding the others left over, so that the
// list adds up to the batch. That is the q.s. line; where it would move by more
// than the tolerance, or there is none, the largest. Should even that one move
// too far, all others are rounded down: then it can only gain.
func absorb(f *levigate.Formula, rows []*row, batch, tolerance *big.Rat) (*row, *big.Rat) {
	var qs, largest *row
	for _, r := range rows {
		if f.Lines[r.line].QS {
			qs = r
		}
		if largest == nil || r.mass.Cmp(largest.mass) > 0 {
			largest = r
		}
	}
	for _, r := range []*row{qs, largest} {
		if r == nil {
			continue
		}
		left := rest(rows, r, batch)
		moved := new(big.Rat).Sub(left, r.mass)
		most := times(r.mass, tolerance)
		if left.Sign() >= 0 && moved.Abs(moved).Cmp(most.Quo(most, hundred)) <= 0 {
			return r, left
		}
	}
	for _, r := range rows {
		if r != largest {
			r.target = floor(r.mass, r.step)
		}
	}
	return largest, rest(rows, largest, batch)
}

// rest is what the other rows leave of the batch.
func rest(rows []*row, but *row, batch *big.Rat) *big.Rat {
	left := new(big.Rat).Set(batch)
	for _, r := range rows {
		if r != but {
			left.Sub(left, r.target)
		}
	}
	return left
}

// portionOf is the most in one portion, in steps of the balance.
func portionOf(target *big.Rat, how choice) quantity.Decimal {
	if how.portions <= 1 {
		return decimal(target)
	}
	each := new(big.Rat).Quo(target, big.NewRat(int64(how.portions), 1))
	return decimal(ceiling(each, how.interval))
}
