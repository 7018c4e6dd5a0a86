// Package composition opens a formula twice: into what is declared, by weight
// as added, and into what it holds.
package composition

import (
	"slices"
	"strings"

	"levigate"
	"levigate/cite"
	"levigate/internal/assess/part"
	"levigate/quantity"
	"levigate/work"
)

// Part opens the composition and gives the total water.
var Part = part.Part{Name: "composition", Gives: []string{"water.total"}, Run: run}

// TotalWater is how the water of all lines adds up.
var TotalWater = work.Register(&work.Method{
	ID:    "water.total",
	Title: "Total water held by the lines",
	Kind:  work.Procedure,
	Text: "Each line brings its percentage times the water its raw material holds as delivered, " +
		"a reading of the lot before the range on file; the lines add. Moisture natural to powders counts: " +
		"it is not declared as Aqua, but microbes and tubes do not read labels.",
	Unit:     quantity.GramPer100g,
	Accuracy: "as good as the water of the raw materials; the arithmetic is exact",
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Checks: []work.Check{{
		What: "100 % of a raw material at 13.5 % holds 13.5 g", By: work.Law, Want: 13.5, Tol: 1e-12,
		Got: func() float64 { return brought(100, 13.5) },
	}},
})

// brought is the water a line brings, g per 100 g of the formula.
func brought(grams, waterPercent float64) float64 { return grams * waterPercent / 100 }

func run(s *part.Sheet) {
	declare(s)
	hold(s)
	water := total(s)
	if water.State != work.Missing {
		// One band for one thing: lots are not all wet at once.
		s.Composition.Held[0].Grams = levigate.Range{Typical: water.Value, Low: water.Low, High: water.High}
	}
	s.Figures = append(s.Figures, water)
}

// declare adds the declared shares of all lines by substance, by falling
// share.
func declare(s *part.Sheet) {
	out := make([]levigate.Contained, 0, 2*len(s.Lines))
	for i := range s.Lines {
		l := &s.Lines[i]
		if l.Opened == nil {
			continue
		}
		for _, share := range l.Declared {
			at := -1
			for j := range out {
				if out[j].Substance == share.Substance && (share.Substance != nil || out[j].INCI == share.INCI) {
					at = j
					break
				}
			}
			if at < 0 {
				inci := share.INCI
				if share.Substance != nil {
					inci = share.Substance.INCI
				}
				at = len(out)
				out = append(out, levigate.Contained{INCI: inci, Substance: share.Substance})
			}
			c := &out[at]
			c.Percent.Typical += l.Grams * share.Percent.Typical / 100
			c.Percent.Low += l.Grams * share.Percent.Low / 100
			c.Percent.High += l.Grams * share.Percent.High / 100
			if n := len(c.From); n == 0 || c.From[n-1] != l.Index {
				c.From = append(c.From, l.Index)
			}
		}
	}
	for i := range out {
		c := &out[i]
		if c.Substance == nil {
			continue
		}
		if d := c.Substance.Density.Typical; d > 0 {
			c.Volume = c.Percent.Typical / d
		}
		if m := c.Substance.MolarMass; m > 0 {
			c.Moles = c.Percent.Typical / m
		}
	}
	slices.SortStableFunc(out, func(a, b levigate.Contained) int {
		switch {
		case a.Percent.Typical > b.Percent.Typical:
			return -1
		case a.Percent.Typical < b.Percent.Typical:
			return 1
		}
		return strings.Compare(a.INCI, b.INCI)
	})
	s.Composition.Contained = out
}

// hold adds what the lines truly hold: water, then the dry parts by substance.
func hold(s *part.Sheet) {
	out := make([]levigate.Held, 1, 2*len(s.Lines)+1)
	out[0] = levigate.Held{Kind: levigate.Water, Name: "water"}
	add := func(h *levigate.Held, line int, typ, low, high float64) {
		h.Grams.Typical += typ
		h.Grams.Low += low
		h.Grams.High += high
		if n := len(h.From); n == 0 || h.From[n-1] != line {
			h.From = append(h.From, line)
		}
	}
	for i := range s.Lines {
		l := &s.Lines[i]
		if l.Opened == nil {
			continue
		}
		if l.Water.High > 0 {
			add(&out[0], l.Index, brought(l.Grams, l.Water.Typical), brought(l.Grams, l.Water.Low), brought(l.Grams, l.Water.High))
		}
		for _, share := range l.Dry {
			name, kind := share.INCI, part.KindOf(share.Substance)
			if share.Substance != nil {
				name = share.Substance.INCI
			}
			at := slices.IndexFunc(out, func(h levigate.Held) bool { return h.Name == name && h.Kind == kind })
			if at < 0 {
				at = len(out)
				out = append(out, levigate.Held{Kind: kind, Name: name})
			}
			// The wetter the lot, the less of everything else it brings.
			add(&out[at], l.Index, l.Grams*(100-l.Water.Typical)*share.Percent.Typical/1e4,
				l.Grams*(100-l.Water.High)*share.Percent.Low/1e4, l.Grams*(100-l.Water.Low)*share.Percent.High/1e4)
		}
	}
	slices.SortStableFunc(out[1:], func(a, b levigate.Held) int {
		if o := order(a.Kind) - order(b.Kind); o != 0 {
			return o
		}
		switch {
		case a.Grams.Typical > b.Grams.Typical:
			return -1
		case a.Grams.Typical < b.Grams.Typical:
			return 1
		}
		return 0
	})
	s.Composition.Held = out
}

func order(k levigate.Kind) int {
	return slices.Index([]levigate.Kind{levigate.Water, levigate.Solute, levigate.Oil, levigate.Powder, levigate.Other}, k)
}

// total makes the figure water.total.
func total(s *part.Sheet) work.Figure {
	const id, title = "water.total", "Total water"
	if needs := s.Needs(); needs != "" {
		return work.None(id, title, quantity.GramPer100g, TotalWater, needs)
	}
	f := work.Figure{ID: id, Title: title, Unit: quantity.GramPer100g, State: work.Good, Method: TotalWater,
		Grade: cite.MeasuredHere, Sources: TotalWater.Sources}
	moves := make([]work.Move, 0, len(s.Lines))
	var sum float64
	for i := range s.Lines {
		l := &s.Lines[i]
		w := brought(l.Grams, l.Water.Typical)
		sum += w
		if l.Water.High == 0 && !l.WaterCause.NotStated {
			continue
		}
		if l.Water.Low == l.Water.High && !l.WaterCause.NotStated {
			continue
		}
		moves = part.Move(moves, work.Move{Cause: l.WaterCause,
			Low: brought(l.Grams, l.Water.Low) - w, High: brought(l.Grams, l.Water.High) - w})
	}
	for i := range s.Lines {
		// A trace does not decide how well the total is known.
		if l := &s.Lines[i]; brought(l.Grams, l.Water.Typical) > 0.01*sum {
			f.Grade = cite.Weakest(f.Grade, l.WaterCause.Grade)
		}
	}
	f.SetBand(sum, moves, 0, 100)
	if rec := s.Recorder(title); rec.On() {
		record(rec, s, sum)
		f.Working = rec.Step()
	}
	return f
}

// record writes the table of lines, largest first.
func record(rec *work.Recorder, s *part.Sheet, sum float64) {
	t := work.Table{Head: []string{"line", "raw material", "% of formula", "water held, %", "brings, g/100 g"}}
	lines := make([]*part.Line, 0, len(s.Lines))
	for i := range s.Lines {
		if s.Lines[i].Water.Typical > 0 {
			lines = append(lines, &s.Lines[i])
		}
	}
	slices.SortStableFunc(lines, func(a, b *part.Line) int {
		switch x, y := a.Grams*a.Water.Typical, b.Grams*b.Water.Typical; {
		case x > y:
			return -1
		case x < y:
			return 1
		}
		return 0
	})
	for _, l := range lines {
		value, low, high := quantity.Shown(l.Water.Typical, l.Water.Low, l.Water.High, quantity.Percent)
		held := value + " (" + low + "–" + high + ")"
		if l.Water.Low == l.Water.High {
			held = value
		}
		t.Rows = append(t.Rows, []string{part.Number(l.Index), l.Material.Name, quantity.Fixed(l.Grams, 2), held,
			quantity.Fixed(brought(l.Grams, l.Water.Typical), 3)})
	}
	t.Foot = []string{"", "total", "", "", quantity.Fixed(sum, 3)}
	rec.Show("water brought by each line", &t)
}
