package weighing

import (
	"math/big"

	"levigate"
	"levigate/quantity"
)

// weighing turns a row into what the list says of its line.
func (r *row) weighing(f *levigate.Formula, absorbs bool, tolerance *big.Rat) levigate.Weighing {
	l := &f.Lines[r.line]
	w := levigate.Weighing{
		Line: r.line, Phase: l.Phase, Name: nameOf(l), Percent: l.Percent, Grams: decimal(r.target), Shows: decimal(r.target),
		Balance: r.how.index, Minimum: r.how.shownMinimum(), Uncertainty: r.how.uncertainty(r.mass, r.how.portions),
		Can: r.how.can, Portions: r.how.portions, Portion: portionOf(r.target, r.how), Absorbs: absorbs, Notes: r.notes,
	}
	if m := l.Match.Material; m != nil {
		w.Code = m.Code
	}
	if absorbs {
		w.Uncertainty = r.how.uncertainty(r.target, r.how.portions)
		if r.how.can != levigate.TooLittle {
			w.Shows = decimal(half(r.target, r.how.interval))
		}
	}
	w.From, w.To = r.allowed(w.Shows.Exact(), tolerance)
	return w
}

// allowed is the least and the most the balance may show: the target less and
// more the tolerance, inwards to what the balance can show. Both are zero when
// nothing it shows is that near, or the line is too little for it.
func (r *row) allowed(shows, tolerance *big.Rat) (from, to quantity.Decimal) {
	if r.how.can == levigate.TooLittle || r.target.Sign() == 0 {
		return from, to
	}
	off := times(r.target, tolerance)
	off.Quo(off, hundred)
	least := ceiling(new(big.Rat).Sub(r.target, off), r.how.interval)
	most := floor(new(big.Rat).Add(r.target, off), r.how.interval)
	if r.limited && most.Cmp(shows) > 0 {
		most = shows
	}
	if least.Cmp(most) > 0 {
		return from, to
	}
	return decimal(least), decimal(most)
}

func nameOf(l *levigate.Line) string {
	if m := l.Match.Material; m != nil && m.Name != "" {
		return m.Name
	}
	return l.Name
}

// smallestBatch is the least batch in which a line could be weighed directly on
// one of the balances, rounded up to what that balance shows. Zero when on none.
func smallestBatch(scales []*scale, percent quantity.Decimal) quantity.Decimal {
	var least *big.Rat
	if percent.IsZero() {
		return quantity.Decimal{}
	}
	for _, s := range scales {
		if s.minimum.Cmp(s.room) > 0 {
			continue
		}
		b := times(s.minimum, hundred)
		b = ceiling(b.Quo(b, percent.Exact()), s.interval)
		if least == nil || b.Cmp(least) < 0 {
			least = b
		}
	}
	if least == nil || least.Cmp(largestBatch) > 0 {
		return quantity.Decimal{}
	}
	return decimal(least)
}

// largestBatch is as much as a decimal holds, g: a batch beyond it is no answer.
var largestBatch = big.NewRat(1e11, 1)
