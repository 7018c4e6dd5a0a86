package main

import (
	"fmt"
	"io"
	"strings"

	"levigate"
	"levigate/internal/program"
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
	var parts []string
	for _, s := range []string{p.Formula.Code, p.Formula.Name, program.ProductWords(p.Formula.Product)} {
		if s != "" {
			parts = append(parts, s)
		}
	}
	fmt.Fprintf(p, "%s · weighing list for %s g\n\n", p.ink.bold(strings.Join(parts, " · ")), p.Batch)
}

func (p weighingText) balances() {
	fmt.Fprintf(p, "%s\n", p.ink.bold("Balances, each line to within "+p.Tolerance.String()+" %"))
	t := work.Table{Head: []string{"", "balance", "interval g", "repeatability g", "capacity g", "vessel g", "minimum weight g"}}
	for i := range p.Balances {
		b := &p.Balances[i]
		s, tare := b.Repeatability.String(), b.Tare.String()
		if b.Repeatability.IsZero() {
			s = "not stated"
		}
		if b.Tare.IsZero() {
			tare = render.None
		}
		t.Rows = append(t.Rows, []string{fmt.Sprint(i + 1), b.Name, b.Interval.String(), s, b.Capacity.String(), tare, p.fixed(p.Minima[i], i)})
	}
	fmt.Fprintf(p, "%s\n", render.Table(&t, width, "  "))
}

// fixed writes a mass with the places its balance shows, more where it has more.
func (p weighingText) fixed(d quantity.Decimal, balance int) string {
	_, places, _ := strings.Cut(p.Balances[balance].Interval.String(), ".")
	return d.Fixed(len(places))
}

func (p weighingText) lines() {
	fmt.Fprintln(p, p.ink.bold("To weigh"))
	t := work.Table{Head: []string{"phase", "line", "raw material", "%", "g", "balance", "within %", ""}}
	most := 0
	for i := range p.Lines {
		w := &p.Lines[i]
		grams := p.fixed(w.Grams, w.Balance)
		_, places, _ := strings.Cut(grams, ".")
		most = max(most, len(places))
		t.Rows = append(t.Rows, []string{w.Phase, fmt.Sprint(w.Line + 1), w.Name, w.Percent.Fixed(2), grams, fmt.Sprint(w.Balance + 1), within(w), p.remark(w)})
	}
	t.Foot = []string{"", "", "Total", quantity.Hundred.Fixed(2), p.Batch.Fixed(most), "", "", ""}
	fmt.Fprint(p, render.Table(&t, width, "  "))
	if len(p.Phases) > 1 {
		var parts []string
		for _, ph := range p.Phases {
			parts = append(parts, ph.Phase+" "+ph.Grams.Fixed(most)+" g")
		}
		fmt.Fprint(p, render.Prose("By phase: "+strings.Join(parts, ", ")+".", width, "  ", "  "))
	}
	fmt.Fprintln(p)
}

func within(w *levigate.Weighing) string {
	if w.Can == levigate.Nothing {
		return render.None
	}
	return quantity.Significant(100*w.Uncertainty, 2)
}

// remark says in a few words what is special about a line.
func (p weighingText) remark(w *levigate.Weighing) string {
	var out []string
	switch w.Can {
	case levigate.TooLittle:
		out = append(out, "below minimum")
	case levigate.InPortions:
		out = append(out, fmt.Sprintf("%d portions, at most %s g", w.Portions, p.fixed(w.Portion, w.Balance)))
	case levigate.Nothing:
		out = append(out, "nothing to weigh")
	}
	if w.Absorbs && !p.Absorbed.IsZero() {
		out = append(out, "takes up "+render.Minus(p.Absorbed.String())+" g")
	}
	if w.Shows.Cmp(w.Grams) != 0 {
		out = append(out, "shows "+p.fixed(w.Shows, w.Balance))
	}
	return strings.Join(out, "; ")
}

// little says what to do about the lines that no balance weighs, and what else
// is noted of a line.
func (p weighingText) little() {
	for i := range p.Lines {
		w := &p.Lines[i]
		var said []string
		if w.Can == levigate.TooLittle {
			said = append(said, p.settle(w))
		}
		for _, n := range w.Notes {
			said = append(said, strings.ToUpper(n[:1])+n[1:]+".")
		}
		if len(said) > 0 {
			fmt.Fprintf(p, "%s\n%s\n", p.ink.bold(fmt.Sprintf("Line %d, %s", w.Line+1, w.Name)), render.Prose(strings.Join(said, " "), width, "  ", "  "))
		}
	}
}

func (p weighingText) settle(w *levigate.Weighing) string {
	said := fmt.Sprintf("%s g is below the minimum weight of %s g: it may be off by %s %%, not %s %%.",
		p.fixed(w.Grams, w.Balance), p.fixed(w.Minimum, w.Balance), within(w), p.Tolerance)
	if m := w.Premix; m != nil {
		said += fmt.Sprintf(" Pre-mix %s g of it with %s g of %s (line %d), one part to %s, and take %s g of the mix: to within %s %%. Of %s, %s g are then left to weigh by itself.",
			p.fixed(m.Active, m.Balance), p.fixed(m.Diluent, m.Balance), m.Name, m.In+1, m.Parts, p.fixed(m.Take, m.Balance),
			quantity.Significant(100*m.Uncertainty, 2), m.Name, p.fixed(m.Left, m.Balance))
	} else {
		said += " No other line is known to take it up evenly."
	}
	if !w.SmallestBatch.IsZero() {
		said += fmt.Sprintf(" It can be weighed directly from a batch of %s g, or on a finer balance.", w.SmallestBatch)
	}
	return said
}
