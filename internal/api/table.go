package api

import (
	"strconv"
	"strings"

	"levigate"
	"levigate/internal/view"
	"levigate/quantity"
	"levigate/work/render"
)

// table is the formula by phases, with the notes in its margin.
type table struct {
	Fraction int // decimals of the longest percentage
	Whole    []note
	Phases   []phase
	Total    amount
	Unit     string // what the grams are for
}

type phase struct {
	Name  string
	Lines []tableLine
	Sum   amount
}

type tableLine struct {
	Phase, Number  string // the phase's letter stands on its first line only
	Mark           view.Mark
	Material, INCI string
	Amount         amount
	QS             bool
	Function       string
	Notes          []note
	NoteIDs        string
}

// amount is a percentage and its grams, each cut at the decimal point so that
// the points stand under each other.
type amount struct{ Percent, Grams cut }

type cut struct{ Whole, Fraction string }

// number is a line's number as a person counts.
func number(index int) string { return strconv.Itoa(index + 1) }

func tableOf(f *levigate.Formula, notes map[int][]note, whole []note) table {
	t := table{Fraction: 2}
	scale := 1.0 // grams to one percent
	if !f.Batch.IsZero() {
		scale = f.Batch.Float() / 100
	}
	amountOf := func(d quantity.Decimal) amount {
		return amount{cutOf(d.Fixed(2)), cutOf(quantity.Fixed(d.Float()*scale, 2))}
	}
	sums := []quantity.Decimal{}
	for i := range f.Lines {
		l := &f.Lines[i]
		x := tableLine{Number: number(i), Material: l.Name, Amount: amountOf(l.Percent), QS: l.QS}
		if m := l.Match.Material; m != nil {
			x.Mark, x.Material, x.INCI = view.MarkOf(m), render.Tie(m.Name), inciOf(m)
			x.Function = strings.Join(m.Role, ", ")
		}
		for _, n := range notes[i] {
			x.Notes = append(x.Notes, n)
			x.NoteIDs = strings.TrimSpace(x.NoteIDs + " " + n.ID)
		}
		t.Fraction = max(t.Fraction, len(x.Amount.Percent.Fraction)-1)
		last := len(t.Phases) - 1
		if last < 0 || t.Phases[last].Name != l.Phase {
			x.Phase = l.Phase
			t.Phases = append(t.Phases, phase{Name: l.Phase})
			sums = append(sums, quantity.Decimal{})
			last++
		}
		t.Phases[last].Lines = append(t.Phases[last].Lines, x)
		sums[last] = sums[last].Add(l.Percent)
	}
	for i := range t.Phases {
		t.Phases[i].Sum = amountOf(sums[i])
	}
	t.Total = amountOf(f.Total())
	t.Whole = whole
	place(&t)
	return t
}

func cutOf(s string) cut {
	whole, fraction, _ := strings.Cut(s, ".")
	return cut{whole, "." + fraction}
}

func inciOf(m *levigate.Material) string {
	var out []string
	for _, s := range m.Declared {
		out = append(out, s.INCI)
	}
	return strings.Join(out, "; ")
}
