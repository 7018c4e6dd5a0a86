package main

import (
	"fmt"
	"io"
	"math/big"
	"strings"

	"levigate"
	"levigate/internal/program"
	"levigate/quantity"
	"levigate/work"
	"levigate/work/render"
)

// costingText prints a costing.
type costingText struct {
	io.Writer
	*levigate.Costing
	ink ink
}

func printCosting(out io.Writer, c *levigate.Costing) {
	p := costingText{out, c, inkFor(out)}
	p.title()
	p.lines()
	p.answer()
	p.prices()
	p.notes()
}

func (p costingText) title() {
	fmt.Fprintf(p, "%s · cost of the raw materials\nwith the prices known on %s\n\n", p.ink.bold(headline(p.Formula)), program.DayWords(p.Day))
}

// money writes an amount with all its places; with its currency where the head
// of the column can't name one for all.
func (p costingText) money(d quantity.Decimal, currency string, places int) string {
	if p.Currency() != "" {
		return d.Fixed(places)
	}
	return d.Fixed(places) + " " + currency
}

// head names a column of amounts, with the currency where one stands for all.
func (p costingText) head(words, per string) string {
	if in := p.Currency(); in != "" {
		return words + " " + in + per
	}
	return words + per
}

func (p costingText) lines() {
	fmt.Fprintln(p, p.ink.bold("In one kilogram as weighed"))
	t := work.Table{Head: []string{"phase", "line", "raw material", "%", "g", p.head("landed", "/kg"), p.head("cost", ""), "share %"}}
	for i := range p.Lines {
		l := &p.Lines[i]
		row := []string{l.Phase, fmt.Sprint(l.Line + 1), l.Name, l.Percent.Fixed(2), l.Grams.Fixed(1), "no price", render.None, render.None}
		switch {
		case l.Price != nil:
			row[5], row[6] = p.money(l.Landed, l.Price.Currency, levigate.CostPlaces), p.money(l.Cost, l.Price.Currency, levigate.CostPlaces)
			if l.Share != nil {
				row[7] = p.share(l)
			}
		case l.Percent.IsZero():
			row[5] = render.None
		}
		t.Rows = append(t.Rows, row)
	}
	total := "no total"
	if p.Total != nil {
		total = p.Total.Fixed(levigate.CostPlaces)
	}
	t.Foot = []string{"", "", "Total", quantity.Hundred.Fixed(2), "1000.0", "", total, ""}
	fmt.Fprintf(p, "%s\n", render.Table(&t, width, "  "))
}

// share is a line's part of the cost to one place, from the amounts: Share is
// rounded already, and rounded twice a last digit may come out wrong.
func (p costingText) share(l *levigate.CostLine) string {
	part := new(big.Rat).Mul(l.Cost.Exact(), quantity.Hundred.Exact())
	return quantity.Round(part.Quo(part, p.Total.Exact()), 1).Fixed(1)
}

func (p costingText) answer() {
	if no := program.NoTotal(p.Costing); no != "" {
		fmt.Fprintf(p, "%s\n", render.Prose(no, width, "", ""))
		return
	}
	fmt.Fprintf(p, "%s\n", render.Prose(program.CostSentences(p.Costing), width, "", ""))
}

// prices shows what each line was priced from.
func (p costingText) prices() {
	t := work.Table{Head: []string{"line", "list line", p.head("paid", ""), "freight", "other", "pack", "date", "supplier", ""}}
	for i := range p.Lines {
		l := &p.Lines[i]
		x := l.Price
		if x == nil {
			continue
		}
		freight := "not written"
		if x.FreightStated {
			freight = x.Freight.Fixed(2)
		}
		supplier := x.Supplier
		if supplier == "" {
			supplier = render.None
		}
		t.Rows = append(t.Rows, []string{fmt.Sprint(l.Line + 1), fmt.Sprint(x.Place.Line), p.money(x.Paid, x.Currency, 2), freight, x.Other.Fixed(2), x.Pack,
			program.DayWords(x.Date), supplier, remarkOn(l)})
	}
	if len(t.Rows) > 0 {
		fmt.Fprintf(p, "%s\n%s\n", p.ink.bold("Prices used"), render.Table(&t, width, "  "))
	}
}

// remarkOn says in a few words what is special about a line's price.
func remarkOn(l *levigate.CostLine) string {
	notes := l.Notes
	if !strings.EqualFold(l.Price.Material, l.Name) {
		notes = append([]string{"listed as " + l.Price.Material}, notes...)
	}
	return strings.Join(notes, "; ")
}

// notes says what concerns the whole, and of lines without a price what may help.
func (p costingText) notes() {
	for i := range p.Lines {
		if l := &p.Lines[i]; l.Price == nil && len(l.Notes) > 0 {
			fmt.Fprint(p, render.Prose(fmt.Sprintf("Line %d, %s: %s.", l.Line+1, l.Name, strings.Join(l.Notes, "; ")), width, "", ""))
		}
	}
	for _, n := range p.Costing.Notes {
		fmt.Fprint(p, render.Prose(n, width, "", ""))
	}
	fmt.Fprint(p, render.Prose(program.CostCautions, width, "", ""))
}
