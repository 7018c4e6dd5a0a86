package wire

import (
	"levigate"
	"levigate/quantity"
)

// WeighingSchema names this edition of the weighing list.
const WeighingSchema = "levigate/weighing/1"

// Weighing is a weighing list. Masses are exact, in grams; the lines' grams add
// up to the batch.
type Weighing struct {
	Schema    string           `json:"schema"`
	File      string           `json:"file"`
	Made      Made             `json:"made"`
	Formula   Formula          `json:"formula"`
	Batch     quantity.Decimal `json:"batch"`
	Tolerance quantity.Decimal `json:"tolerance"` // %
	Absorbed  quantity.Decimal `json:"absorbed"`  // what one line takes up of the others' rounding
	Balances  []Balance        `json:"balances"`
	Lines     []WeighingLine   `json:"lines"`
	Phases    []PhaseGrams     `json:"phases"`
	Notes     []string         `json:"notes"`
}

// Balance is one balance and its minimum weight at the tolerance.
type Balance struct {
	Name          string            `json:"name"`
	Interval      quantity.Decimal  `json:"interval"`
	Repeatability *quantity.Decimal `json:"repeatability"` // null when not stated
	Capacity      quantity.Decimal  `json:"capacity"`
	Tare          quantity.Decimal  `json:"tare"`
	Minimum       quantity.Decimal  `json:"minimum"`
}

// WeighingLine is one line on its balance. Line and balance count from 1.
type WeighingLine struct {
	Line          int               `json:"line"`
	Phase         string            `json:"phase"`
	Material      string            `json:"material"`
	Code          string            `json:"code"`
	Percent       quantity.Decimal  `json:"percent"`
	Grams         quantity.Decimal  `json:"grams"`
	Shows         quantity.Decimal  `json:"shows"` // grams as the balance can show them
	From          *quantity.Decimal `json:"from"`  // the least it may show; null where nothing can be within the tolerance
	To            *quantity.Decimal `json:"to"`    // the most it may show
	Balance       int               `json:"balance"`
	Minimum       quantity.Decimal  `json:"minimum"`
	Uncertainty   *float64          `json:"uncertainty"` // fraction at k = 2; null for nothing
	Can           levigate.CanWeigh `json:"can"`
	Portions      int               `json:"portions"`
	Portion       quantity.Decimal  `json:"portion"`
	SmallestBatch *quantity.Decimal `json:"smallest-batch"` // null unless below the minimum weight
	Premix        *Premix           `json:"premix"`
	Absorbs       bool              `json:"absorbs"`
	Notes         []string          `json:"notes"`
}

// Premix is a pre-dilution proposed for a line that is too little. In is the
// line diluted into, from 1; left is what is still to be weighed of that.
type Premix struct {
	In          int              `json:"in"`
	Material    string           `json:"material"`
	Parts       quantity.Decimal `json:"parts"` // of diluent on one
	Active      quantity.Decimal `json:"active"`
	Diluent     quantity.Decimal `json:"diluent"`
	Take        quantity.Decimal `json:"take"`
	Left        quantity.Decimal `json:"left"`
	Balance     int              `json:"balance"`
	Uncertainty *float64         `json:"uncertainty"`
}

// PhaseGrams is what one phase weighs.
type PhaseGrams struct {
	Phase string           `json:"phase"`
	Grams quantity.Decimal `json:"grams"`
}

// WeighingOf turns a weighing list into JSON's shape.
func WeighingOf(l *levigate.WeighingList, file string, made Made) Weighing {
	out := Weighing{
		Schema: WeighingSchema, File: file, Made: made, Formula: formulaOf(l.Formula),
		Batch: l.Batch, Tolerance: l.Tolerance, Absorbed: l.Absorbed,
		Balances: each(l.Balances, balanceOf), Lines: each(l.Lines, weighingLineOf),
		Phases: each(l.Phases, func(p *levigate.PhaseGrams) PhaseGrams { return PhaseGrams{p.Phase, p.Grams} }),
		Notes:  list(l.Notes),
	}
	for i := range out.Balances {
		out.Balances[i].Minimum = l.Minima[i]
	}
	return out
}

func balanceOf(b *levigate.Balance) Balance {
	return Balance{Name: b.Name, Interval: b.Interval, Repeatability: stated(b.Repeatability), Capacity: b.Capacity, Tare: b.Tare}
}

func weighingLineOf(w *levigate.Weighing) WeighingLine {
	out := WeighingLine{
		Line: w.Line + 1, Phase: w.Phase, Material: w.Name, Code: w.Code, Percent: w.Percent, Grams: w.Grams, Shows: w.Shows, From: stated(w.From), To: stated(w.To),
		Balance: w.Balance + 1, Minimum: w.Minimum, Uncertainty: known(w.Uncertainty), Can: w.Can, Portions: w.Portions, Portion: w.Portion,
		SmallestBatch: stated(w.SmallestBatch), Absorbs: w.Absorbs, Notes: list(w.Notes),
	}
	if p := w.Premix; p != nil {
		out.Premix = &Premix{In: p.In + 1, Material: p.Name, Parts: p.Parts, Active: p.Active, Diluent: p.Diluent, Take: p.Take,
			Left: p.Left, Balance: p.Balance + 1, Uncertainty: known(p.Uncertainty)}
	}
	return out
}

// stated is null for the zero that stands for "not stated".
func stated(d quantity.Decimal) *quantity.Decimal {
	if d.IsZero() {
		return nil
	}
	return &d
}
