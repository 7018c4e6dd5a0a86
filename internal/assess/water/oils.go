package water

import (
	"fmt"
	"math"

	"levigate/calc/water"
	"levigate/cite"
	"levigate/internal/assess/part"
	"levigate/quantity"
	"levigate/work"
)

// Dissolves is the method of what an oil-continuous product can take up.
var Dissolves = work.Register(&work.Method{
	ID:    "water.oils-dissolve",
	Title: "Water dissolved in oils against what they can dissolve",
	Kind:  work.Procedure,
	Text: "Each oil, butter and wax dissolves water in proportion to activity, most at activity 1; the amounts add. " +
		"What is beyond that stays as free drops, whose activity is 1. The room is what can be dissolved at the temperature less what is there. " +
		"Oils dissolve more when warm, so drops may form on cooling.",
	Unit:     quantity.GramPer100g,
	Accuracy: "what an oil dissolves is known within a factor of 1.5 to 2",
	Sources:  []cite.Ref{{Key: "yang2020"}, {Key: "oil-water-anchors"}},
	Checks: []work.Check{{
		What: "at 25 °C, 50 g of an oil that dissolves 0.12 % holds 0.06 g", By: work.Law, Want: 0.06, Tol: 1e-12,
		Got: func() float64 { return 50 * water.Linear(1, 0.0012, 16000, 25) },
	}},
})

// oils makes the figures of an oil-continuous product.
func oils(s *part.Sheet, y *system) {
	dissolved := work.Figure{ID: "water.oil-dissolved", Title: "Water dissolved in the oils", Unit: quantity.GramPer100g,
		State: work.Good, Method: Dissolves, Grade: cite.MeasuredHere, Sources: Dissolves.Sources}
	// Powders, crystals and drops of polyol share the water with the oils: at
	// rest all stand at one activity, and the oils hold what they hold there.
	at := y.sum.Activity(y.total)
	f := y.look([]float64{math.Min(at, nearlyOne)})
	var held, takes float64
	for h := range y.holders {
		if y.holders[h].iso.AtOne.Known() {
			held += f.g[0][h]
			takes += f.dg[0][h]
		}
	}
	share := 0.0
	switch {
	case at >= 1:
		held = y.total - (f.all[0] - held) // what nothing else holds lies in the oils, as drops in the end
		share = 1
	case f.dll[0] > 0:
		share = takes / f.dll[0]
	}
	var moves []work.Move
	for i := range s.Lines {
		l := &s.Lines[i]
		if l.Water.High == 0 {
			continue
		}
		dissolved.Grade = cite.Weakest(dissolved.Grade, l.WaterCause.Grade)
		moves = part.Move(moves, work.Move{Cause: l.WaterCause, Low: share * l.Grams * (l.Water.Low - l.Water.Typical) / 100,
			High: share * l.Grams * (l.Water.High - l.Water.Typical) / 100})
	}
	dissolved.SetBand(held, append([]work.Move(nil), moves...), 0, 100)
	if len(y.holders) > 0 && held < 0.99*y.total {
		dissolved.Notes = append(dissolved.Notes, "the rest is held by powders, crystals or polyol, at the same activity")
	}
	if rec := s.Recorder(dissolved.Title); rec.On() {
		rec.Say("%s g of water per 100 g are shared out; at activity %s everything together holds just that, and %s g of it lie in the oils",
			quantity.Fixed(y.total, 3), quantity.Fixed(at, 3), quantity.Fixed(held, 3))
		y.terms(rec, math.Min(at, nearlyOne))
		dissolved.Working = rec.Step()
	}
	s.Figures = append(s.Figures, dissolved)

	here := y.capacity("water.oil-capacity", fmt.Sprintf("Water the oils can dissolve at %.0f °C", y.celsius), y.celsius)
	room := work.Figure{ID: "water.oil-room", Title: fmt.Sprintf("Room before free drops form at %.0f °C", y.celsius), Unit: quantity.GramPer100g,
		State: here.State, Method: Dissolves, Grade: here.Grade, Sources: Dissolves.Sources, Notes: append([]string{"a free drop has activity 1"}, here.Notes...)}
	all := append([]work.Move(nil), here.Moves...)
	for _, m := range moves {
		all = append(all, work.Move{Cause: m.Cause, Low: -m.Low, High: -m.High})
	}
	room.SetBand(here.Value-held, all, math.Inf(-1), math.Inf(1))
	if rec := s.Recorder(room.Title); rec.On() {
		rec.Say("room = what the oils can dissolve − what they hold = %s − %s = %s g per 100 g",
			quantity.Fixed(here.Value, 3), quantity.Fixed(held, 3), quantity.Fixed(room.Value, 3))
		room.Working = rec.Step()
	}
	s.Figures = append(s.Figures, here, room,
		y.capacity("water.oil-capacity-05", "Water the oils can dissolve at 5 °C", 5),
		y.capacity("water.oil-capacity-25", "Water the oils can dissolve at 25 °C", 25),
		y.capacity("water.oil-capacity-40", "Water the oils can dissolve at 40 °C", 40))
}

// oilsTogether is one cause for all oils: what is doubtful is how much water
// oils dissolve at all, which errs the same way for each, so their ends add.
var oilsTogether = work.Cause{Key: "method/oils-dissolve", Name: "how much water oils and waxes dissolve",
	Grade: cite.Assumed, Settle: "dry a weighed sample that has stood over water for a week, or send it for Karl Fischer"}

// capacity is what the oils dissolve at activity 1.
func (y *system) capacity(id, title string, celsius float64) work.Figure {
	at := y.at(celsius)
	f := work.Figure{ID: id, Title: title, Unit: quantity.GramPer100g, State: work.Good, Method: Dissolves,
		Grade: cite.MeasuredHere, Sources: Dissolves.Sources}
	var sum, low, high float64
	table := work.Table{Head: []string{"oil", "g/100 g", "dissolves at activity 1, %", "holds, g/100 g"}}
	rec := y.sheet.Recorder(title)
	for h := range at.holders {
		hold := &at.holders[h]
		if !hold.iso.AtOne.Known() {
			continue
		}
		g, _ := at.sum.Holders[h].Curve.Water(1)
		g *= at.sum.Holders[h].Grams
		sum += g
		r := hold.iso.AtOne
		f.Grade = cite.Weakest(f.Grade, hold.iso.Grade)
		low += g * (r.Low/r.Typical - 1)
		high += g * (r.High/r.Typical - 1)
		if rec.On() {
			table.Rows = append(table.Rows, []string{hold.name, quantity.Fixed(at.sum.Holders[h].Grams, 2),
				quantity.Significant(100*g/at.sum.Holders[h].Grams, 2), quantity.Fixed(g, 3)})
		}
	}
	f.SetBand(sum, []work.Move{{Cause: &oilsTogether, Low: low, High: high}}, 0, math.Inf(1))
	if rec.On() {
		table.Foot = []string{"total", "", "", quantity.Fixed(sum, 3)}
		rec.Show("what each oil dissolves", &table)
		f.Working = rec.Step()
	}
	if outside(celsius) > 0 {
		f.State = work.OutOfRange
		f.Notes = append(f.Notes, fmt.Sprintf("%.0f °C lies outside %s", celsius, provedRange))
	}
	return f
}
