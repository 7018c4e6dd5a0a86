package structure

import (
	"levigate"
	"levigate/calc/structure"
	"levigate/cite"
	"levigate/internal/assess/part"
	"levigate/quantity"
	"levigate/work"
)

// whereabouts is the cause of most of the crowding's band: nobody sees where
// the fine powder ends up.
var whereabouts = work.Cause{Key: "structure/powder-sits", Name: "where the fine powder sits: all in the polyol, or all in the oil",
	Low: -1, High: 1, Grade: cite.Assumed, Settle: "look under a microscope, or set the line to sit in oil or in polyol"}

func crowding(s *part.Sheet, v fractions) {
	const id, title = "structure.internal-fraction", "Crowding (oil share by volume)"
	if s.Continuous != levigate.PolarContinuous {
		why := "not applicable: oil surrounds everything"
		if s.Continuous == levigate.NoLiquid {
			why = "not applicable: there is no liquid"
		}
		s.Figures = append(s.Figures, work.None(id, title, quantity.One, structure.MethodInternalFraction, why))
		return
	}
	f := work.Figure{ID: id, Title: title, Unit: quantity.One, State: work.Good, Method: structure.MethodInternalFraction, Sources: structure.MethodInternalFraction.Sources}
	moves, grade := each(s, v, fractions.droplets)
	f.Grade = grade
	mid := v.droplets()
	if v.powder > 0 {
		moves = append(moves, work.Move{Cause: &whereabouts, Low: v.withPowder(0, 1) - mid, High: v.withPowder(1, 0) - mid})
		f.Grade = cite.Weakest(f.Grade, whereabouts.Grade)
	}
	f.SetBand(mid, kept(moves), 0, 1)
	if rec := s.Recorder(title); rec.On() {
		rec.Say("oil %s mL, polar liquid %s mL, fine powder %s mL, grains %s mL per 100 g", ml(v.oil), ml(v.polar), ml(v.powder+v.inOil+v.inPolyol), ml(v.grain))
		rec.Equation(structure.MethodInternalFraction, mid,
			work.Input{Value: v.oil + v.inOil, Grade: grade, From: "the lines below"}, work.Input{Value: v.polar + v.inPolyol, Grade: grade, From: "the lines below"})
		rec.Say("droplets only %s; fine powder in the polyol %s; fine powder in the oil %s", two(mid), two(v.withPowder(0, 1)), two(v.withPowder(1, 0)))
		record(rec, s, v)
		f.Working = rec.Step()
	}
	s.Figures = append(s.Figures, f)
}

func grains(s *part.Sheet, v fractions) {
	f := work.Figure{ID: "structure.grain-fraction", Title: "Grains by volume", Unit: quantity.One, State: work.Good, Method: structure.MethodGrainFraction, Sources: structure.MethodGrainFraction.Sources}
	var moves []work.Move
	moves, f.Grade = each(s, v, fractions.grains)
	f.SetBand(v.grains(), kept(moves), 0, 1)
	if rec := s.Recorder(f.Title); rec.On() {
		rec.Equation(structure.MethodGrainFraction, v.grains(),
			work.Input{Value: v.grain, Grade: f.Grade, From: "the lines below"}, work.Input{Value: v.total(), Grade: f.Grade, From: "the lines below"})
		record(rec, s, v)
		f.Working = rec.Step()
	}
	s.Figures = append(s.Figures, f)
}

// record writes the table of volumes.
func record(rec *work.Recorder, s *part.Sheet, v fractions) {
	t := work.Table{Head: []string{"line", "raw material", "g/100 g", "density, g/mL", "mL/100 g", "counts as"}}
	names := [...]string{part.Polar: "polar liquid", part.OilSlot: "oil", part.FinePowder: "fine powder", part.Grains: "grain"}
	for i := range s.Lines {
		l := &s.Lines[i]
		if l.Grams == 0 {
			continue
		}
		counts := names[s.Slot(l)]
		if l.OilInside > 0 {
			counts += ", " + quantity.Fixed(100*l.OilInside, 0) + " % of it oil"
		}
		t.Rows = append(t.Rows, []string{part.Number(l.Index), l.Material.Name, quantity.Fixed(l.Grams, 2), quantity.Fixed(l.Density.Mid, 3),
			quantity.Fixed(structure.Volume(l.Grams, l.Density.Mid), 3), counts})
	}
	t.Foot = []string{"", "total", "100", "", quantity.Fixed(v.total(), 3), ""}
	rec.Show("volumes", &t)
	rec.Say("density = 100 g / %s mL = %s g/mL, without air", quantity.Fixed(v.total(), 2), quantity.Fixed(100/v.total(), 4))
}

func ml(v float64) string  { return quantity.Fixed(v, 1) }
func two(v float64) string { return quantity.Fixed(v, 2) }

// PoursAt is the property of a reading: water stirred in by the gram until the
// gel pours, g per 100 g.
const PoursAt = "structure.pours-at"

// bodyGoes is the stretch of internal fraction in which a crowded gel loses
// its body: from random close packing of equal spheres down to where droplets
// no longer touch. Between 0.70 and 0.60 for the gels this is about.
const bodyGoesFrom, bodyGoesTo = 0.70, 0.60

// waterDensity at 25 °C, g/mL (handbook value).
const waterDensity = 0.99705

// rinse draws the internal fraction against the water added.
func rinse(s *part.Sheet, v fractions) {
	c := levigate.Curve{ID: "structure.rinse",
		X: levigate.Axis{Title: "Water added", Unit: "g/100 g", Values: part.RinseGrid},
		Y: levigate.Axis{Title: "Crowding (oil share by volume)", Unit: "1"}}
	for _, x := range part.RinseGrid {
		w := v
		w.polar += x / waterDensity
		c.Y.Values = append(c.Y.Values, w.droplets())
		c.Low = append(c.Low, w.withPowder(0, 1))
		c.High = append(c.High, w.withPowder(1, 0))
	}
	if r, ok := s.Reading("version", s.Formula.Code, PoursAt); ok {
		w := v
		w.polar += r.Value / waterDensity
		c.Marks = append(c.Marks, levigate.CurveMark{ID: "pours", Text: "it pours (reading " + r.ID + ")", X: r.Value, ToX: r.Value, Y: w.droplets()})
	} else if from, to := reaches(v, bodyGoesFrom), reaches(v, bodyGoesTo); to > 0 {
		c.Marks = append(c.Marks, levigate.CurveMark{ID: "body", Text: "body goes somewhere here", X: max(from, 0), ToX: to, Y: bodyGoesFrom})
	}
	s.Assessment.Curves = append(s.Assessment.Curves, c)
}

// reaches is the water that brings the internal fraction down to phi; negative
// when it is there already.
func reaches(v fractions, phi float64) float64 {
	inside := v.oil + v.inOil
	return (inside/phi - inside - v.polar - v.inPolyol) * waterDensity
}
