// Package structure is the part of a formula check that answers how the
// volumes lie: density, crowding, grains.
package structure

import (
	"math"

	"levigate"
	"levigate/calc/structure"
	"levigate/cite"
	"levigate/internal/assess/part"
	"levigate/quantity"
	"levigate/work"
)

// Part gives volumes, density and crowding.
var Part = part.Part{
	Name: "structure",
	Gives: []string{"structure.density", "structure.internal-fraction", "structure.grain-fraction", "structure.volume-oil",
		"structure.volume-polar", "structure.volume-powder", "structure.volume-grain", "structure.rinse"},
	Run: run,
}

// fractions are the volumes of a formula, mL per 100 g.
type fractions struct {
	oil, polar, powder, grain float64
	// set holds fine powder a person has placed: in the oil, in the polyol.
	inOil, inPolyol float64
}

func (v fractions) total() float64 {
	return v.oil + v.polar + v.powder + v.inOil + v.inPolyol + v.grain
}

// droplets is the internal fraction with the free fine powder left out.
func (v fractions) droplets() float64 { return v.withPowder(0, 0) }

// withPowder is the internal fraction with parts of the free fine powder
// counted in the oil and in the polyol.
func (v fractions) withPowder(oil, polyol float64) float64 {
	return structure.InternalFraction(v.oil+v.inOil+oil*v.powder, v.polar+v.inPolyol+polyol*v.powder)
}

func (v fractions) grains() float64 { return structure.GrainFraction(v.grain, v.total()) }

// add puts a volume of a line where it counts. Crystals that stay undissolved
// are grains, and are added apart.
func (v *fractions) add(s *part.Sheet, l *part.Line, ml float64) {
	switch s.Slot(l) {
	case part.OilSlot:
		v.oil += ml
	case part.Grains:
		v.grain += ml
	case part.FinePowder:
		switch l.Placed {
		case levigate.InOil:
			v.inOil += ml
		case levigate.InPolyol:
			v.inPolyol += ml
		default:
			v.powder += ml
		}
	default:
		v.oil += ml * l.OilInside
		v.polar += ml * (1 - l.OilInside)
	}
}

func run(s *part.Sheet) {
	missing := s.Unopened()
	for i := range s.Lines {
		if l := &s.Lines[i]; l.Opened != nil && l.Grams > 0 && l.Density.Mid == 0 {
			missing = append(missing, l.Material.Name)
		}
	}
	v := volumes(s)
	why := ""
	switch {
	case len(missing) > 0:
		why = "needs a density for " + part.First(missing)
	case len(s.Unread) > 0:
		why = "needs the percentage of " + part.First(s.Unread)
	case v.total() == 0:
		why = "no line has a percentage"
	}
	if why != "" {
		s.Figures = append(s.Figures,
			work.None("structure.density", "Density without air", quantity.GramPerML, structure.MethodDensity, why),
			work.None("structure.internal-fraction", "Crowding (oil share by volume)", quantity.One, structure.MethodInternalFraction, why),
			work.None("structure.grain-fraction", "Grains by volume", quantity.One, structure.MethodGrainFraction, why))
		return
	}
	density(s, v)
	volumesByKind(s, v)
	crowding(s, v)
	grains(s, v)
	if s.Curves && s.Continuous == levigate.PolarContinuous {
		rinse(s, v)
	}
}

// volumes adds the volumes of the lines that have a density.
func volumes(s *part.Sheet) fractions {
	var v fractions
	for i := range s.Lines {
		if l := &s.Lines[i]; l.Opened != nil && l.Density.Mid > 0 {
			v.add(s, l, structure.Volume(l.Grams-l.Undissolved, l.Density.Mid))
			v.grain += structure.Volume(l.Undissolved, l.Density.Mid)
		}
	}
	return v
}

// each gives every line's density as a cause and how far a quantity of the
// volumes moves with it.
func each(s *part.Sheet, v fractions, of func(fractions) float64) (moves []work.Move, grade cite.Grade) {
	mid := of(v)
	grade = cite.MeasuredHere
	moves = make([]work.Move, 0, len(s.Lines)+3)
	for i := range s.Lines {
		l := &s.Lines[i]
		if l.Grams == 0 {
			continue
		}
		if l.Density.Low < l.Density.High {
			low, high := v, v
			low.add(s, l, structure.Volume(l.Grams, l.Density.Low)-structure.Volume(l.Grams, l.Density.Mid))
			high.add(s, l, structure.Volume(l.Grams, l.Density.High)-structure.Volume(l.Grams, l.Density.Mid))
			moves = part.Move(moves, work.Move{Cause: l.Density, Low: of(low) - mid, High: of(high) - mid})
		}
		if l.Grams >= 1 {
			grade = cite.Weakest(grade, l.Density.Grade)
		}
	}
	return moves, grade
}

// shrink is the contraction volumes add up without.
var shrink = work.Cause{Key: "method/ideal-volumes", Name: "volumes taken to add", Low: -0.003, High: 0.011, Grade: cite.Compiled,
	Settle: "weigh a known volume of the product, freed of air"}

func density(s *part.Sheet, v fractions) {
	f := work.Figure{ID: "structure.density", Title: "Density without air", Unit: quantity.GramPerML, State: work.Good, Method: structure.MethodDensity, Sources: structure.MethodDensity.Sources}
	moves, grade := each(s, v, func(v fractions) float64 { return structure.Density(100, v.total()) })
	f.Grade = grade
	value := structure.Density(100, v.total())
	// Only the polar liquid shrinks, and only where water meets polyol.
	moves = append(moves, work.Move{Cause: &shrink, Low: shrink.Low * value * v.polar / v.total(), High: shrink.High * value * v.polar / v.total()})
	f.SetBand(value, moves, 0, math.Inf(1))
	if rec := s.Recorder(f.Title); rec.On() {
		record(rec, s, v)
		f.Working = rec.Step()
	}
	if r, ok := s.Reading("version", s.Formula.Code, f.ID); ok {
		air := 1 - r.Value/f.Value
		part.Become(&f, r)
		if air > 0 {
			f.Notes = append(f.Notes, "the difference from the calculated value means about "+quantity.Fixed(100*air, 1)+" % air by volume")
		}
	}
	s.Figures = append(s.Figures, f)
}

func volumesByKind(s *part.Sheet, v fractions) {
	for _, k := range []struct {
		id, title string
		of        func(fractions) float64
	}{
		{"structure.volume-oil", "Volume of the oil", func(v fractions) float64 { return v.oil }},
		{"structure.volume-polar", "Volume of the polar liquid", func(v fractions) float64 { return v.polar }},
		{"structure.volume-powder", "Volume of fine powder", func(v fractions) float64 { return v.powder + v.inOil + v.inPolyol }},
		{"structure.volume-grain", "Volume of grains", func(v fractions) float64 { return v.grain }},
	} {
		f := work.Figure{ID: k.id, Title: k.title, Unit: quantity.MLPer100g, State: work.Good, Method: structure.MethodDensity, Sources: structure.MethodDensity.Sources}
		var moves []work.Move
		moves, f.Grade = each(s, v, k.of)
		f.SetBand(k.of(v), kept(moves), 0, math.Inf(1))
		if rec := s.Recorder(f.Title); rec.On() {
			record(rec, s, v)
			f.Working = rec.Step()
		}
		s.Figures = append(s.Figures, f)
	}
}

// kept leaves out causes that do not move the figure.
func kept(moves []work.Move) []work.Move {
	out := moves[:0]
	for _, m := range moves {
		if m.Size() > 0 {
			out = append(out, m)
		}
	}
	return out
}
