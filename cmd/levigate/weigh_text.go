package main

import (
	"fmt"
	"io"
	"strings"

	"levigate"
	"levigate/quantity"
	"levigate/work"
	"levigate/work/render"
)

// weighingText prints a weighing list for the bench.
type weighingText struct {
	io.Writer
	*levigate.WeighingList
	ink ink
}

func printWeighing(out io.Writer, l *levigate.WeighingList) {
	p := weighingText{out, l, inkFor(out)}
	p.title()
	p.balances()
	p.lines()
	p.little()
	for _, n := range l.Notes {
		fmt.Fprint(p, render.Prose(n, width, "", ""))
	}
}

func (p weighingText) title() {
	fmt.Fprintf(p, "%s · %s\n\n", p.ink.bold(headline(p.Formula)), p.Title())
}

func (p weighingText) balances() {
	fmt.Fprintf(p, "%s\n", p.ink.bold("Balances, "+p.Precision()))
	t := p.BalanceTable()
	fmt.Fprintf(p, "%s\n", render.Table(&t, width, "  "))
}

func (p weighingText) lines() {
	fmt.Fprintln(p, p.ink.bold("To weigh"))
	t := work.Table{Head: []string{"phase", "line", "raw material", "%", "g", "balance", "within %", ""}}
	for i := range p.Lines {
		w := &p.Lines[i]
		within := w.Within()
		if within == "" {
			within = render.None
		}
		t.Rows = append(t.Rows, []string{w.Phase, fmt.Sprint(w.Line + 1), w.Name, w.Percent.Fixed(2), p.Shown(w.Grams, w.Balance), fmt.Sprint(w.Balance + 1), within, strings.Join(p.Remarks(i), "; ")})
	}
	most := p.Places()
	t.Foot = []string{"", "", "Total", quantity.Hundred.Fixed(2), p.Batch.Fixed(most), "", "", ""}
	fmt.Fprint(p, render.Table(&t, width, "  "))
	if len(p.Phases) > 1 {
		var parts []string
		for _, ph := range p.Phases {
			name := ph.Phase
			if name == "" {
				name = "no phase"
			}
			parts = append(parts, name+" "+ph.Grams.Fixed(most)+" g")
		}
		fmt.Fprint(p, render.Prose("By phase: "+strings.Join(parts, ", ")+".", width, "  ", "  "))
	}
	fmt.Fprintln(p)
}

// little says what to do about the lines that no balance weighs, and what else
// is noted of a line.
func (p weighingText) little() {
	for i := range p.Lines {
		if said := p.Advice(i); said != "" {
			w := &p.Lines[i]
			fmt.Fprintf(p, "%s\n%s\n", p.ink.bold(fmt.Sprintf("Line %d, %s", w.Line+1, w.Name)), render.Prose(said, width, "  ", "  "))
		}
	}
}
