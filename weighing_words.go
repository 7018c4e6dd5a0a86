package levigate

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"levigate/quantity"
	"levigate/work"
)

// What a weighing list says in words stands here once: the terminal and the
// paper both take it from here, so that they cannot disagree.

// Shown writes a mass with the places a balance shows, more where it has more.
func (l *WeighingList) Shown(d quantity.Decimal, balance int) string {
	_, places, _ := strings.Cut(l.Balances[balance].Interval.String(), ".")
	return d.Fixed(len(places))
}

// Places is the most decimals any line's grams are shown with, for the totals.
func (l *WeighingList) Places() int {
	most := 0
	for i := range l.Lines {
		_, places, _ := strings.Cut(l.Shown(l.Lines[i].Grams, l.Lines[i].Balance), ".")
		most = max(most, len(places))
	}
	return most
}

// Within is by how much a line may be off, in % of it; empty for a line of
// nothing.
func (w *Weighing) Within() string {
	if w.Can == Nothing {
		return ""
	}
	return quantity.Significant(100*w.Uncertainty, 2)
}

// BalanceTable lists the balances at hand with their minimum weights.
func (l *WeighingList) BalanceTable() work.Table {
	t := work.Table{Head: []string{"", "balance", "interval g", "repeatability g", "capacity g", "vessel g", "minimum weight g"}}
	for i := range l.Balances {
		b := &l.Balances[i]
		s, tare := b.Repeatability.String(), b.Tare.String()
		if b.Repeatability.IsZero() {
			s = "not stated"
		}
		if b.Tare.IsZero() {
			tare = "–"
		}
		t.Rows = append(t.Rows, []string{fmt.Sprint(i + 1), b.Name, b.Interval.String(), s, b.Capacity.String(), tare, l.Shown(l.Minima[i], i)})
	}
	return t
}

// UnderOne reports whether less than a gram is to be weighed: the trade marks
// such a line, for a slip there is easy to make and hard to see.
func (w *Weighing) UnderOne() bool {
	return w.Can != Nothing && w.Grams.Cmp(oneGram) < 0
}

var oneGram = quantity.MustDecimal("1")

// Remarks says in a few words each what is special about a line.
func (l *WeighingList) Remarks(i int) []string {
	w := &l.Lines[i]
	var out []string
	if w.UnderOne() {
		out = append(out, "under 1 g")
	}
	switch w.Can {
	case TooLittle:
		out = append(out, "below minimum")
	case InPortions:
		out = append(out, fmt.Sprintf("%d portions, at most %s g", w.Portions, l.Shown(w.Portion, w.Balance)))
	case Nothing:
		out = append(out, "nothing to weigh")
	}
	if w.Absorbs && !l.Absorbed.IsZero() {
		if l.Absorbed.Negative() {
			out = append(out, "gives up "+quantity.Decimal{}.Sub(l.Absorbed).String()+" g to rounding")
		} else {
			out = append(out, "takes up "+l.Absorbed.String()+" g of rounding")
		}
	}
	if w.Shows.Cmp(w.Grams) != 0 {
		out = append(out, "shows "+l.Shown(w.Shows, w.Balance))
	}
	if left, lines, balance := l.Lent(w.Line); len(lines) > 0 {
		word := "pre-mix"
		if len(lines) > 1 {
			word = "pre-mixes"
		}
		out = append(out, fmt.Sprintf("%s g after the %s for %s", l.Shown(left, balance), word, namedLines(lines)))
	}
	return out
}

// Lent is what the pre-mixes leave of a line to weigh by itself, and the lines
// they are for; none when it is lent to none.
func (l *WeighingList) Lent(line int) (left quantity.Decimal, lines []int, balance int) {
	for i := range l.Lines {
		p := l.Lines[i].Premix
		if p == nil || p.In != line {
			continue
		}
		// The last one leaves least: each counts those before it.
		if len(lines) == 0 || p.Left.Cmp(left) < 0 {
			left, balance = p.Left, p.Balance
		}
		lines = append(lines, l.Lines[i].Line)
	}
	return left, lines, balance
}

// namedLines names lines, counted from 0, as a person counts: "lines 6 and 10".
func namedLines(lines []int) string {
	word := "line "
	if len(lines) > 1 {
		word = "lines "
	}
	for i, n := range lines {
		switch {
		case i > 0 && i == len(lines)-1:
			word += " and "
		case i > 0:
			word += ", "
		}
		word += fmt.Sprint(n + 1)
	}
	return word
}

// Advice says what to do about a line that no balance weighs, and what else is
// noted of a line; empty for most.
func (l *WeighingList) Advice(i int) string {
	w := &l.Lines[i]
	var said []string
	if w.Can == TooLittle {
		said = append(said, l.settle(w))
	}
	for _, n := range w.Notes {
		first, size := utf8.DecodeRuneInString(n)
		said = append(said, string(unicode.ToUpper(first))+n[size:]+".")
	}
	return strings.Join(said, " ")
}

func (l *WeighingList) settle(w *Weighing) string {
	said := fmt.Sprintf("%s g is below the minimum weight of %s g: it may be off by %s %%, not %s %%.",
		l.Shown(w.Grams, w.Balance), l.Shown(w.Minimum, w.Balance), w.Within(), l.Tolerance)
	if m := w.Premix; m != nil {
		said += fmt.Sprintf(" Pre-mix %s g of it with %s g of %s (line %d), one part to %s, and take %s g of the mix: to within %s %%. Of %s, %s g are then left to weigh by itself.",
			l.Shown(m.Active, m.Balance), l.Shown(m.Diluent, m.Balance), m.Name, m.In+1, m.Parts, l.Shown(m.Take, m.Balance),
			quantity.Significant(100*m.Uncertainty, 2), m.Name, l.Shown(m.Left, m.Balance))
	} else {
		said += " No pre-mix with another line was found that keeps the tolerance."
	}
	if w.SmallestBatch.IsZero() {
		said += " No batch helps on the balances at hand: take a finer one, or allow more and write down why."
	} else {
		said += fmt.Sprintf(" It can be weighed directly from a batch of %s g, or on a finer balance.", w.SmallestBatch)
	}
	return said
}

// Title says what the list is.
func (l *WeighingList) Title() string { return "weighing list for " + l.Batch.String() + " g" }

// Precision says to within what each line is weighed.
func (l *WeighingList) Precision() string {
	return "each line to within " + l.Tolerance.String() + " %"
}
