package papers

import (
	"fmt"
	"strings"
	"time"

	"levigate"
	"levigate/quantity"
	"levigate/work"
	"levigate/work/render"
)

// Weighing is what stands on the paper of a weighing list.
type Weighing struct {
	Title    string // the product's name
	About    string // code, kind of product, and what this paper is
	Facts    []Fact
	Blanks   [][]string // fields to fill in by hand, in rows
	Precise  string     // to within what each line is weighed
	Balances work.Table
	Phases   []WeighingPhase
	Total    WeighingLine
	Advice   []WeighingAdvice
	Notes    []string
	Cautions []string
	Foot     string
	Program  string
	Printed  time.Time
}

// Fact is a word and what it is.
type Fact struct{ Name, Text string }

// WeighingPhase is one phase in the order of weighing.
type WeighingPhase struct {
	Name  string // "Phase A"
	Lines []WeighingLine
	Sum   WeighingLine
}

// WeighingLine is one row to weigh, or a sum.
type WeighingLine struct {
	Number   string // of the line in the formula
	Name     string
	Code     string
	Percent  string
	Grams    string
	Balance  string
	From, To string
	Framed   bool // a slip is easy here: under a gram, or not to be weighed as it stands
	Remarks  []string
}

// WeighingAdvice is what to do about one line, and the steps of its pre-mix.
type WeighingAdvice struct {
	Title string
	Text  string
	Steps []WeighingLine
}

// Origin is where a paper comes from and what else must stand on it.
type Origin struct {
	File     string // the formula file's name
	Product  string // the kind of product, in words
	Program  string // with its version
	Tables   string // the fingerprint of the reference data
	Cautions []string
	Printed  time.Time
}

// NewWeighing is the paper of a weighing list.
func NewWeighing(l *levigate.WeighingList, o Origin) *Weighing {
	f := l.Formula
	w := &Weighing{
		Title: f.Name, Precise: "Balances, " + l.Precision(), Balances: l.BalanceTable(),
		Notes: l.Notes, Cautions: o.Cautions, Program: o.Program, Printed: o.Printed,
		About: joined(" · ", f.Code, o.Product, l.Title()),
		Foot:  joined(" · ", f.Code, l.Title(), "draft, not a frozen version", o.Program),
		Facts: []Fact{
			{"formula file", o.File}, {"tolerance", "±" + l.Tolerance.String() + " % of a line"},
			{"printed", o.Printed.Format(time.DateOnly)}, {"made with", joined(", tables ", o.Program, o.Tables)},
		},
		Blanks: [][]string{{"batch no.", "made by", "checked by"}, {"date", "room °C", "room % RH"}},
	}
	if w.Title == "" {
		w.Title = f.Code
	}
	places, sums := l.Places(), percents(l)
	for i := range l.Lines {
		x := &l.Lines[i]
		if n := len(w.Phases); i == 0 || x.Phase != l.Lines[i-1].Phase {
			w.Phases = append(w.Phases, WeighingPhase{Name: phaseName(x.Phase)})
			if n < len(l.Phases) {
				w.Phases[n].Sum = WeighingLine{Name: strings.ToLower(w.Phases[n].Name[:1]) + w.Phases[n].Name[1:], Percent: sums[n].Fixed(2), Grams: l.Phases[n].Grams.Fixed(places)}
			}
		}
		p := &w.Phases[len(w.Phases)-1]
		p.Lines = append(p.Lines, lineOf(l, i))
		if said := l.Advice(i); said != "" {
			w.Advice = append(w.Advice, WeighingAdvice{fmt.Sprintf("Line %d, %s", x.Line+1, x.Name), said, stepsOf(l, x)})
		}
	}
	w.Total = WeighingLine{Name: "Total", Percent: quantity.Hundred.Fixed(2), Grams: l.Batch.Fixed(places)}
	return w
}

func phaseName(phase string) string {
	if phase == "" {
		return "No phase named"
	}
	return "Phase " + phase
}

// percents adds up the percentages of each phase.
func percents(l *levigate.WeighingList) []quantity.Decimal {
	var out []quantity.Decimal
	for i := range l.Lines {
		if i == 0 || l.Lines[i].Phase != l.Lines[i-1].Phase {
			out = append(out, quantity.Decimal{})
		}
		last := &out[len(out)-1]
		*last = last.Add(l.Lines[i].Percent)
	}
	return out
}

func lineOf(l *levigate.WeighingList, i int) WeighingLine {
	x := &l.Lines[i]
	out := WeighingLine{
		Number: fmt.Sprint(x.Line + 1), Name: x.Name, Code: x.Code, Percent: x.Percent.Fixed(2), Grams: l.Shown(x.Grams, x.Balance),
		Balance: fmt.Sprint(x.Balance + 1), From: render.None, Framed: x.UnderOne(), Remarks: l.Remarks(i),
	}
	if !x.To.IsZero() {
		out.From, out.To = l.Shown(x.From, x.Balance), l.Shown(x.To, x.Balance)
	}
	// Part of it goes in with pre-mixes: what goes on the balance is the rest.
	if left, lines, balance := l.Lent(x.Line); len(lines) > 0 {
		out.Framed, out.From, out.To = true, "by itself", l.Shown(left, balance)
	}
	return out
}

// stepsOf are the three weighings of a pre-mix. They have no room either way:
// that the mix holds the tolerance counts on each being weighed to the digit.
func stepsOf(l *levigate.WeighingList, x *levigate.Weighing) []WeighingLine {
	m := x.Premix
	if m == nil {
		return nil
	}
	step := func(name string, grams quantity.Decimal) WeighingLine {
		return WeighingLine{Name: name, Grams: l.Shown(grams, m.Balance), Balance: fmt.Sprint(m.Balance + 1)}
	}
	return []WeighingLine{
		step(fmt.Sprintf("%s (line %d)", x.Name, x.Line+1), m.Active),
		step(fmt.Sprintf("%s (line %d)", m.Name, m.In+1), m.Diluent),
		step("Of the mix, into the batch", m.Take),
	}
}

// joined puts what is not empty together.
func joined(between string, parts ...string) string {
	var out []string
	for _, p := range parts {
		if p != "" {
			out = append(out, p)
		}
	}
	return strings.Join(out, between)
}
