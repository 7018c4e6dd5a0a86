package weighing

import (
	"fmt"
	"math/big"
	"slices"
	"strings"

	"levigate"
	"levigate/cite"
	"levigate/quantity"
	"levigate/refdata"
	"levigate/rules"
)

// keepLimits sees that rounding takes no limited substance over a limit which
// the formula as written keeps: it rounds the lines that bring it down instead.
// It judges nothing else. What the formula itself is over is the formula check's
// to say, and only rows read in their source count that are about the product's
// use: the limit of what is left on is none of a shampoo's.
func keepLimits(f *levigate.Formula, rows []*row, absorbs *row, batch, tolerance *big.Rat) {
	if len(f.Markets) > 0 && !slices.Contains(f.Markets, "eu") {
		return // the rows on file are of the EU
	}
	uses := rules.UsesOf(f.Product)
	for _, limit := range refdata.PreservativeLimits() {
		if limit.From.Mark == cite.Read && slices.ContainsFunc(limit.Use, func(u string) bool { return slices.Contains(uses, u) }) {
			l := limited{limit, rows, shares(f, rows, &limit)}
			l.keep(absorbs, batch, tolerance)
		}
	}
}

// limited is one row of the limits and what each line brings to it, as a share
// of the line.
type limited struct {
	refdata.PreservativeLimit
	rows   []*row
	shares []*big.Rat
}

// shares opens each line into what the row limits, as declared and as the row
// counts it.
func shares(f *levigate.Formula, rows []*row, limit *refdata.PreservativeLimit) []*big.Rat {
	out := make([]*big.Rat, len(rows))
	for i, r := range rows {
		out[i] = new(big.Rat)
		m := f.Lines[r.line].Match.Material
		if m == nil {
			continue
		}
		for _, share := range m.Declared {
			for _, s := range limit.Substances {
				if s.INCI == share.INCI {
					part := times(exactFloat(share.Percent.Typical), exactFloat(s.Factor))
					out[i].Add(out[i], part.Quo(part, hundred))
				}
			}
		}
	}
	return out
}

// sum adds up what the rows bring, by one of their masses.
func (l *limited) sum(mass func(*row) *big.Rat) *big.Rat {
	sum := new(big.Rat)
	for i, r := range l.rows {
		sum.Add(sum, times(l.shares[i], mass(r)))
	}
	return sum
}

func (l *limited) keep(absorbs *row, batch, tolerance *big.Rat) {
	most := times(batch, exactFloat(l.Limit))
	most.Quo(most, hundred)
	written := func(r *row) *big.Rat { return r.mass }
	planned := func(r *row) *big.Rat { return r.target }
	sum := l.sum(written)
	if sum.Sign() == 0 || sum.Cmp(most) > 0 {
		return
	}
	for i, r := range l.rows {
		r.capped = r.capped || l.shares[i].Sign() > 0
	}
	for i, r := range l.rows {
		if l.sum(planned).Cmp(most) <= 0 {
			break
		}
		if r == absorbs || l.shares[i].Sign() == 0 || r.target.Cmp(r.mass) <= 0 {
			continue
		}
		r.down(tolerance)
		absorbs.target = rest(l.rows, absorbs, batch)
		r.say("rounded down: rounded up it would pass the limit on file of %s", l.words())
	}
	if l.sum(planned).Cmp(most) > 0 {
		absorbs.say("with the rounding it takes up it passes the limit on file of %s: weigh the other lines on a finer balance", l.words())
		return
	}
	heavy := new(big.Rat).Add(hundred, tolerance)
	plan := exactFloat(l.Limit)
	plan.Mul(plan, hundred).Quo(plan, heavy)
	if heavy.Quo(heavy, hundred).Mul(heavy, l.sum(planned)).Cmp(most) <= 0 {
		return
	}
	for i, r := range l.rows {
		if l.shares[i].Sign() > 0 {
			r.limited = true
			r.say("weighed %s %% heavy it would pass the limit on file of %s; for that much room plan at most %s %%%s",
				decimal(tolerance), l.words(), decimal(floor(plan, big.NewRat(1, 1000))), l.as())
		}
	}
}

// words names the limit: "0.50 % as Benzoic Acid (V/1, leave-on)".
func (l *limited) words() string {
	return fmt.Sprintf("%s %%%s (V/%s, %s)", quantity.Significant(l.Limit, 2), l.as(), l.Entry, strings.Join(l.Use, ", "))
}

// as says what the row counts its substances as.
func (l *limited) as() string {
	if l.As == "" {
		return ""
	}
	return " as " + l.As
}

func (r *row) say(format string, args ...any) {
	if s := fmt.Sprintf(format, args...); !slices.Contains(r.notes, s) {
		r.notes = append(r.notes, s)
	}
}
