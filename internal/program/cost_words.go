package program

import (
	"fmt"
	"strings"
	"time"

	"levigate"
	"levigate/quantity"
)

// CostCautions is what a person must know beside a cost, once.
const CostCautions = "The prices are yours, as listed. Labour, pack, labels, tests, filling losses, rejects and overhead are not in it."

// NoTotal says why a costing has no total, in sentences; empty when it has one.
func NoTotal(c *levigate.Costing) string {
	if c.Total != nil {
		return ""
	}
	var said []string
	if n := len(c.Missing); n > 0 {
		have := "have"
		if n == 1 {
			have = "has"
		}
		var names []string
		for _, i := range c.Missing {
			names = append(names, fmt.Sprintf("line %d %s", i+1, c.Lines[i].Name))
		}
		said = append(said, fmt.Sprintf("No total: %d of %d lines %s no price, %s %% of the weight: %s.",
			n, len(c.Lines), have, quantity.Hundred.Sub(c.Priced).Fixed(2), strings.Join(names, "; ")))
	}
	switch {
	case len(c.Currencies) > 1:
		var in []string
		for _, x := range c.Currencies {
			in = append(in, x.Currency+" ("+lineNumbers(x.Lines)+")")
		}
		first := "No total: the"
		if len(said) > 0 {
			first = "The"
		}
		said = append(said, first+" prices are in "+and(in)+". No exchange rate is kept here: write them in one currency, at the rate that was paid.")
	case len(c.Currencies) == 1:
		x := c.Currencies[0]
		said = append(said, fmt.Sprintf("Priced so far: %s %s for %s %% of the weight. That is not the cost.", x.Sum.Fixed(levigate.CostPlaces), x.Currency, x.Priced.Fixed(2)))
	}
	return strings.Join(said, " ")
}

// lineNumbers counts lines from 1: "line 3", "lines 1, 2 and 5".
func lineNumbers(lines []int) string {
	var out []string
	for _, i := range lines {
		out = append(out, fmt.Sprint(i+1))
	}
	if len(out) == 1 {
		return "line " + out[0]
	}
	return "lines " + and(out)
}

// CostSentences says what the raw materials cost, with the loss it was worked out
// for and what moves it most; empty without a total.
func CostSentences(c *levigate.Costing) string {
	if c.Total == nil {
		return ""
	}
	in := c.Currency()
	said := fmt.Sprintf("A kilogram as weighed costs %s %s.", c.Total.Fixed(levigate.CostPlaces), in)
	if c.YieldStated {
		said += fmt.Sprintf(" With a making yield of %s %% a kilogram of bulk costs %s %s.", c.Yield, c.Bulk.Fixed(levigate.CostPlaces), in)
	} else {
		said += " No making yield is stated: 100 % is taken, nothing lost, until your own figure replaces it (--yield), and a kilogram of bulk costs the same."
	}
	if c.Unit != nil {
		said += fmt.Sprintf(" One fill of %s g takes %s g as weighed, for %s %s.", c.Fill, c.Weighed, c.Unit.Fixed(levigate.CostPlaces), in)
	}
	if m := c.Mover; m != nil {
		said += fmt.Sprintf(" %s (%s) moves it most: a price %s %% higher adds %s %s to a kilogram of bulk", m.Name, lineNumbers(m.Lines), m.Percent, m.Bulk.Fixed(levigate.CostPlaces), in)
		if c.Unit != nil {
			said += fmt.Sprintf(", %s to a fill", m.Unit.Fixed(levigate.CostPlaces))
		}
		said += "."
	}
	return said
}

// DayWords is a day as it is printed.
func DayWords(t time.Time) string { return t.Format(time.DateOnly) }
