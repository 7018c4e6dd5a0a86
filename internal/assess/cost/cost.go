package cost

import (
	"fmt"
	"math/big"
	"time"

	"levigate"
	"levigate/quantity"
)

// Ask is what a costing is made for.
type Ask struct {
	Prices []levigate.Price
	Day    time.Time         // prices of a later day don't count
	Yield  *quantity.Decimal // bulk in % of what is weighed; nil when not stated
	Fill   *quantity.Decimal // g in one unit; nil when not asked
}

// What may be asked.
var (
	leastYield  = quantity.MustDecimal("1")
	largestFill = quantity.MustDecimal("1000000")
	dearer      = quantity.MustDecimal("10") // %, of a price that rises
)

// Of costs a formula. The problems are the price list's; with any there is no
// costing. An error says what was asked wrongly.
func Of(f *levigate.Formula, lib levigate.Library, ask Ask) (levigate.Costing, []levigate.Problem, error) {
	c := levigate.Costing{Formula: f, Day: levigate.DayOf(ask.Day), Listed: len(ask.Prices), Yield: quantity.Hundred}
	if err := check(f, ask); err != nil {
		return c, nil, err
	}
	if ask.Yield != nil {
		c.Yield, c.YieldStated = *ask.Yield, true
	}
	if ask.Fill != nil {
		c.Fill = *ask.Fill
		c.Weighed = rounded(perUnit(&c, big.NewRat(1000, 1)))
	}
	s, problems := sortPrices(f, lib, ask.Prices, c.Day)
	if len(problems) > 0 {
		return c, problems, nil
	}
	for i := range f.Lines {
		c.Lines = append(c.Lines, costLine(&c, s, i))
	}
	sum(&c)
	c.Notes = notes(&c, s)
	return c, nil, nil
}

// check refuses what can't be costed, each with what to do.
func check(f *levigate.Formula, ask Ask) error {
	fault := func(help, format string, args ...any) error {
		return &levigate.Error{Code: levigate.Invalid, Message: fmt.Sprintf(format, args...), Help: help}
	}
	switch total := f.Total(); {
	case len(f.Lines) == 0:
		return fault("add lines", "the formula has no lines to cost")
	case total.Cmp(quantity.Hundred) != 0:
		return fault("let one line fill up with qs: true, or correct the percentages", "the formula comes to %s %%, not 100, so a kilogram of it has no cost", total)
	case ask.Yield != nil && (ask.Yield.Cmp(leastYield) < 0 || ask.Yield.Cmp(quantity.Hundred) > 0):
		return fault("write the bulk made in % of what was weighed, like 92", "the yield is %s %%; it lies between %s and 100", ask.Yield, leastYield)
	case ask.Fill != nil && (ask.Fill.IsZero() || ask.Fill.Cmp(largestFill) > 0):
		return fault("write the bulk in one unit, like 50 g", "the fill is %s g", ask.Fill)
	}
	return nil
}

// costLine costs one line.
func costLine(c *levigate.Costing, s *shelf, line int) levigate.CostLine {
	l := &c.Formula.Lines[line]
	out := levigate.CostLine{Line: line, Phase: l.Phase, Name: l.Name, Percent: l.Percent,
		Grams: quantity.Round(new(big.Rat).Mul(l.Percent.Exact(), big.NewRat(10, 1)), quantity.MaxDecimals)}
	if m := l.Match.Material; m != nil {
		out.Name, out.Code = named(m), m.Code
	}
	if !c.Fill.IsZero() {
		out.InUnit = rounded(perUnit(c, out.Grams.Exact()))
	}
	o, byINCI := s.of(l)
	if o == nil {
		if d := s.delivered(l); d != nil && !l.Percent.IsZero() {
			p, _ := d.newest()
			out.Notes = append(out.Notes, fmt.Sprintf("line %d of the list prices %s: name that in the formula if that is what is weighed", p.Place.Line, named(d.material)))
		}
		return out
	}
	p, older := o.newest()
	out.Price = p
	landed := p.Landed()
	out.Landed = rounded(landed)
	out.Cost = rounded(landed.Mul(landed, l.Percent.Exact()).Quo(landed, hundred))
	if byINCI {
		out.Notes = append(out.Notes, "priced by its INCI name: see that the price is of this grade")
	}
	if p.Old(c.Day) {
		out.Notes = append(out.Notes, "over a year old")
	}
	if older > 0 {
		out.Notes = append(out.Notes, fmt.Sprintf("newest of %d on the list", older+1))
	}
	if p.Paid.IsZero() {
		out.Notes = append(out.Notes, "the goods cost nothing")
	}
	return out
}

// perUnit is how much of an amount for a kilogram as weighed goes into one unit.
func perUnit(c *levigate.Costing, perKilo *big.Rat) *big.Rat {
	r := new(big.Rat).Mul(perBulk(c, perKilo), c.Fill.Exact())
	return r.Quo(r, big.NewRat(1000, 1))
}

// perBulk is how much of it goes into a kilogram of bulk.
func perBulk(c *levigate.Costing, perKilo *big.Rat) *big.Rat {
	r := new(big.Rat).Mul(perKilo, hundred)
	return r.Quo(r, c.Yield.Exact())
}

var hundred = big.NewRat(100, 1)

func rounded(r *big.Rat) quantity.Decimal { return quantity.Round(r, levigate.CostPlaces) }
