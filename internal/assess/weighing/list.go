package weighing

import (
	"fmt"
	"math/big"

	"levigate"
	"levigate/quantity"
)

// Loosest is the widest tolerance a list is made for, %.
const Loosest = 50

// List works out what goes on the balances for one batch. The formula must come
// to 100 %, or no list could both follow it and add up to the batch.
func List(f *levigate.Formula, batch quantity.Decimal, balances []levigate.Balance, tolerance quantity.Decimal) (levigate.WeighingList, error) {
	out := levigate.WeighingList{Formula: f, Batch: batch, Tolerance: tolerance, Balances: balances}
	if err := ask(f, batch, balances, tolerance); err != nil {
		return out, err
	}
	size, within := batch.Exact(), tolerance.Exact()
	scales := make([]*scale, len(balances))
	for i := range balances {
		scales[i] = scaleOf(&balances[i], i, within)
		out.Minima = append(out.Minima, scales[i].shownMinimum())
	}
	rows := make([]*row, 0, len(f.Lines))
	for _, line := range byPhase(f) {
		r := &row{line: line, mass: of(size, f.Lines[line].Percent)}
		r.how = choose(scales, r.mass)
		r.round(within)
		if r.mass.Sign() > 0 && r.target.Sign() == 0 {
			r.say("it comes to less than half of %s g, the last place kept here, and is not in the sums", decimal(smallest))
		}
		rows = append(rows, r)
	}
	absorbs, left := absorb(f, rows, size, within)
	absorbs.target = left
	keepLimits(f, rows, absorbs, size, within)
	if absorbs.target.Cmp(absorbs.mass) != 0 {
		absorbs.how = choose(scales, absorbs.target)
	}
	out.Absorbed = decimal(absorbs.target).Sub(decimal(absorbs.mass))
	for _, r := range rows {
		out.Lines = append(out.Lines, r.weighing(f, r == absorbs, within))
	}
	for i, r := range rows {
		if w := &out.Lines[i]; w.Can == levigate.TooLittle {
			w.SmallestBatch = smallestBatch(scales, f.Lines[r.line].Percent)
			w.Premix = premix(f, rows, r, scales, within)
		}
	}
	out.Phases = phases(out.Lines)
	out.Notes = notes(&out)
	return out, nil
}

// ask refuses what no list can be made of, each with what to do.
func ask(f *levigate.Formula, batch quantity.Decimal, balances []levigate.Balance, tolerance quantity.Decimal) error {
	fault := func(help, format string, args ...any) error {
		return &levigate.Error{Code: levigate.Invalid, Message: fmt.Sprintf(format, args...), Help: help}
	}
	switch total := f.Total(); {
	case len(f.Lines) == 0:
		return fault("add lines", "the formula has no lines to weigh")
	case total.Cmp(quantity.Hundred) != 0:
		return fault("let one line fill up with qs: true, or correct the percentages", "the formula comes to %s %%, not 100, so no list can add up to the batch", total)
	case batch.IsZero() || batch.Negative():
		return fault("name a size above zero, like 500 g", "the batch is %s g", batch)
	case len(balances) == 0:
		return fault("name at least one, like 0.01 g,2000 g,s=0.01 g", "no balance is named")
	case tolerance.IsZero() || tolerance.Negative() || tolerance.Exact().Cmp(big.NewRat(Loosest, 1)) > 0:
		return fault(fmt.Sprintf("name a tolerance above 0 and up to %d %%, like 2", Loosest), "the tolerance is %s %%", tolerance)
	}
	for i := range balances {
		if b := &balances[i]; b.Interval.IsZero() || b.Interval.Negative() || b.Repeatability.Negative() || b.Tare.Negative() || b.Room().Cmp(b.Interval) <= 0 {
			return fault("name its scale interval and a capacity above it, vessel off", "balance %q can weigh nothing", b.Name)
		}
	}
	return nil
}

// byPhase orders the lines by phase, phases in the order in which the formula
// first names them, lines as written within each.
func byPhase(f *levigate.Formula) []int {
	var names []string
	of := map[string][]int{}
	for i := range f.Lines {
		p := f.Lines[i].Phase
		if of[p] == nil {
			names = append(names, p)
		}
		of[p] = append(of[p], i)
	}
	out := make([]int, 0, len(f.Lines))
	for _, p := range names {
		out = append(out, of[p]...)
	}
	return out
}

func phases(lines []levigate.Weighing) []levigate.PhaseGrams {
	var out []levigate.PhaseGrams
	for i := range lines {
		if n := len(out); n == 0 || out[n-1].Phase != lines[i].Phase {
			out = append(out, levigate.PhaseGrams{Phase: lines[i].Phase})
		}
		p := &out[len(out)-1]
		p.Grams = p.Grams.Add(lines[i].Grams)
	}
	return out
}
