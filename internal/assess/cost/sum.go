package cost

import (
	"math/big"
	"slices"

	"levigate"
	"levigate/quantity"
)

// sum adds the lines up by currency and, where every line has a price in one
// currency, makes the totals.
func sum(c *levigate.Costing) {
	for i := range c.Lines {
		l := &c.Lines[i]
		switch {
		case l.Price != nil:
			add(c, l)
			c.Priced = c.Priced.Add(l.Percent)
		case !l.Percent.IsZero():
			c.Missing = append(c.Missing, l.Line)
		}
	}
	if len(c.Missing) > 0 || len(c.Currencies) != 1 {
		return
	}
	total := c.Currencies[0].Sum
	bulk := rounded(perBulk(c, total.Exact()))
	c.Total, c.Bulk = &total, &bulk
	if !c.Fill.IsZero() {
		unit := rounded(perUnit(c, total.Exact()))
		c.Unit = &unit
	}
	if total.IsZero() {
		return
	}
	for i := range c.Lines {
		share := new(big.Rat).Mul(c.Lines[i].Cost.Exact(), hundred)
		d := quantity.Round(share.Quo(share, total.Exact()), 2)
		c.Lines[i].Share = &d
	}
	c.Mover = mover(c)
}

func add(c *levigate.Costing, l *levigate.CostLine) {
	at := slices.IndexFunc(c.Currencies, func(x levigate.CurrencyCost) bool { return x.Currency == l.Price.Currency })
	if at < 0 {
		at = len(c.Currencies)
		c.Currencies = append(c.Currencies, levigate.CurrencyCost{Currency: l.Price.Currency})
	}
	x := &c.Currencies[at]
	x.Lines = append(x.Lines, l.Line)
	x.Sum = x.Sum.Add(l.Cost)
	x.Priced = x.Priced.Add(l.Percent)
}

// mover is the price that moves the cost most. Lines that share a price move
// together.
func mover(c *levigate.Costing) *levigate.CostMover {
	type moved struct {
		lines []int
		cost  quantity.Decimal
	}
	by := map[*levigate.Price]*moved{}
	var most *moved
	for i := range c.Lines {
		l := &c.Lines[i]
		if l.Price == nil {
			continue
		}
		if by[l.Price] == nil {
			by[l.Price] = &moved{}
		}
		by[l.Price].lines = append(by[l.Price].lines, l.Line)
		by[l.Price].cost = by[l.Price].cost.Add(l.Cost)
	}
	for i := range c.Lines {
		if m := by[c.Lines[i].Price]; m != nil && (most == nil || m.cost.Cmp(most.cost) > 0) {
			most = m
		}
	}
	more := most.cost.Exact()
	more.Mul(more, dearer.Exact()).Quo(more, hundred)
	out := &levigate.CostMover{Lines: most.lines, Name: c.Lines[most.lines[0]].Name, Percent: dearer, Bulk: rounded(perBulk(c, more))}
	if !c.Fill.IsZero() {
		out.Unit = rounded(perUnit(c, more))
	}
	return out
}
