package program

import (
	"strings"

	"levigate"
	"levigate/internal/assess/cost"
	"levigate/internal/exchange"
	"levigate/quantity"
	"levigate/wire"
)

// CostInput is what to cost, as it was typed.
type CostInput struct {
	File   File
	Prices string // path of the price list
	Yield  string // %; empty when not stated
	Fill   string // with its unit; empty when not asked
	On     string // the day asked about; empty for today
}

// Costed is what came of one formula and one price list: a costing, or the
// problems that kept either from being read.
type Costed struct {
	File     string
	Prices   string
	Costing  *levigate.Costing
	Problems []levigate.Problem // of the formula file
	Listed   []levigate.Problem // of the price list
}

// Cost costs the raw materials of one formula file.
func (p *Program) Cost(in CostInput) (*Costed, error) {
	today := levigate.DayOf(p.Clock())
	ask := cost.Ask{Day: today}
	if in.On != "" {
		day, err := levigate.ParseDay(in.On, today)
		if err != nil {
			return nil, named("on", err, "write year-month-day, like 2026-03-09, not after today")
		}
		ask.Day = day
	}
	if in.Yield != "" {
		d, err := quantity.ParseDecimal(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(in.Yield), "%")))
		if err != nil {
			return nil, named("yield", err, "write the bulk made in % of what was weighed, like 92")
		}
		ask.Yield = &d
	}
	if in.Fill != "" {
		d, err := levigate.ParseGrams(in.Fill)
		if err != nil {
			return nil, named("fill", err, "write the bulk in one unit as a mass, like 50 g; for a volume, mL × the product's density")
		}
		ask.Fill = &d
	}
	if in.Prices == "" {
		return nil, invalid("no price list is named", "add --prices and its file; the first line of it names the columns: material,paid,currency,pack,freight,other,date,supplier,notes")
	}
	out := &Costed{File: in.File.Name, Prices: in.Prices}
	f, problems := p.load(in.File)
	out.Problems = problems
	// Both are read before either is refused: all that is wrong is told at once.
	prices, listed, err := exchange.ReadPrices(in.Prices, today)
	if err != nil {
		listed = unread(in.Prices, err)
	}
	if out.Listed = listed; f == nil || len(listed) > 0 {
		return out, nil
	}
	ask.Prices = prices
	c, listed, err := cost.Of(f, p.Library, ask)
	switch {
	case err != nil:
		return nil, err
	case len(listed) > 0:
		out.Listed = listed
	default:
		out.Costing = &c
	}
	return out, nil
}

// named puts the name of what was typed in front of an error.
func named(what string, err error, help string) error { return invalid(what+": "+err.Error(), help) }

// WireCosted is a costing in JSON's shape, or a refusal in its place; an array of
// two when both files are refused.
func (p *Program) WireCosted(c *Costed) any {
	switch {
	case c.Costing != nil:
		return wire.CostingOf(c.Costing, c.File, c.Prices, p.Made())
	case len(c.Listed) == 0:
		return wire.ErrorOf(c.File, c.Problems)
	case len(c.Problems) == 0:
		return wire.ErrorOf(c.Prices, c.Listed)
	}
	return []any{wire.ErrorOf(c.File, c.Problems), wire.ErrorOf(c.Prices, c.Listed)}
}
