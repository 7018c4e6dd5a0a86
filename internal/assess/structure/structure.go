// Package structure is the part of a formula check that answers how the
// volumes lie: density, crowding, grains.
package structure

import (
	"math"
	"strings"

	"levigate"
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

// Density is the method of structure.density and of the volumes.
var Density = work.Register(&work.Method{
	ID:    "structure.density",
	Title: "Density without air, from the volumes of the lines",
	Kind:  work.Procedure,
	Text: "Volumes add: 100 g over the sum of each line's grams by its density as delivered, 1/ρ = Σ wᵢ/ρᵢ. " +
		"Powders count with their true density. A product that weighs less than this holds air.",
	Unit:     quantity.GramPerML,
	Accuracy: "glycerol and water together shrink by up to 1.1 % of their volume, which is left out; about ±1 % in all",
	Sources:  []cite.Ref{{Key: "volk2018"}},
	Checks: []work.Check{
		{What: "1 g/mL and 0.8 g/mL in equal masses", By: work.Law, Want: 2 / (1/1.0 + 1/0.8), Tol: 1e-12,
			Got: func() float64 { return 100 / (volume(50, 1) + volume(50, 0.8)) }},
		{What: "a note's worked mix: 70 oil 0.915, 20 glycerin 1.2613, 6 clay 2.60, 4 emulsifier 1.10", By: work.Independent, Want: 1.0173, Tol: 5e-5,
			Got: func() float64 {
				return 100 / (volume(70, 0.915) + volume(20, 1.2613) + volume(6, 2.60) + volume(4, 1.10))
			}},
	},
})

func volume(grams, density float64) float64 { return grams / density }

// Crowding is the method of the internal fraction.
var Crowding = work.Register(&work.Method{
	ID:    "structure.internal-fraction",
	Title: "Crowding: oil over oil and liquid polar phase, by volume",
	Kind:  work.Procedure,
	Text: "V(oil) / (V(oil) + V(polar)). Surfactants and gums lie in the polar liquid; grains coarser than 20 µm are filler. " +
		"The band reaches from all fine powder crossing into the polyol, V(oil) / (V(oil) + V(polar) + V(powder)), " +
		"to all of it staying in the oil, (V(oil) + V(powder)) / (V(oil) + V(polar) + V(powder)).",
	Unit:     quantity.One,
	Accuracy: "as the densities; where fine powder sits decides most of it",
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Checks: []work.Check{
		{What: "equal volumes without powder", By: work.Law, Want: 0.5, Tol: 1e-12, Got: func() float64 { return fractions{oil: 3, polar: 3}.droplets() }},
		{What: "no oil is 0", By: work.Law, Want: 0, Tol: 0, Got: func() float64 { return fractions{polar: 3}.droplets() }},
	},
})

// Grains is the method of the grain fraction.
var Grains = work.Register(&work.Method{
	ID:       "structure.grain-fraction",
	Title:    "Grains coarser than 20 µm over the whole, by volume",
	Kind:     work.Procedure,
	Text:     "V(grains) / V(all). Grains are 30 to 100 times a droplet: filler between the droplets, not internal phase.",
	Unit:     quantity.One,
	Accuracy: "as the grains' true density",
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Checks: []work.Check{{What: "a quarter of the volume", By: work.Law, Want: 0.25, Tol: 1e-12,
		Got: func() float64 { return fractions{oil: 1, polar: 2, grain: 1}.grains() }}},
})

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
	inside, outside := v.oil+v.inOil+oil*v.powder, v.polar+v.inPolyol+polyol*v.powder
	if inside+outside == 0 {
		return 0
	}
	return inside / (inside + outside)
}

func (v fractions) grains() float64 {
	if v.total() == 0 {
		return 0
	}
	return v.grain / v.total()
}

func (v *fractions) add(l *part.Line, set levigate.Sits, ml float64) {
	switch l.Slot() {
	case part.OilSlot:
		v.oil += ml
	case part.Grains:
		v.grain += ml
	case part.FinePowder:
		switch set {
		case levigate.InOil:
			v.inOil += ml
		case levigate.InPolyol:
			v.inPolyol += ml
		default:
			v.powder += ml
		}
	default:
		v.polar += ml
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
		why = "needs a density for " + strings.Join(missing, ", ")
	case v.total() == 0:
		why = "no line has a percentage"
	}
	if why != "" {
		s.Figures = append(s.Figures,
			work.None("structure.density", "Density without air", quantity.GramPerML, Density, why),
			work.None("structure.internal-fraction", "Crowding (oil share by volume)", quantity.One, Crowding, why),
			work.None("structure.grain-fraction", "Grains by volume", quantity.One, Grains, why))
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
			v.add(l, s.Formula.Lines[l.Index].Sits, volume(l.Grams, l.Density.Mid))
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
			set := s.Formula.Lines[l.Index].Sits
			low.add(l, set, volume(l.Grams, l.Density.Low)-volume(l.Grams, l.Density.Mid))
			high.add(l, set, volume(l.Grams, l.Density.High)-volume(l.Grams, l.Density.Mid))
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
	f := work.Figure{ID: "structure.density", Title: "Density without air", Unit: quantity.GramPerML, State: work.Good, Method: Density, Sources: Density.Sources}
	moves, grade := each(s, v, func(v fractions) float64 { return 100 / v.total() })
	f.Grade = grade
	value := 100 / v.total()
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
		f := work.Figure{ID: k.id, Title: k.title, Unit: quantity.MLPer100g, State: work.Good, Method: Density, Sources: Density.Sources}
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
