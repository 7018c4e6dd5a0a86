package part

import "levigate"

// Slot is the volume a line fills.
type Slot uint8

// The slots. Surfactants and gums lie in the polar liquid.
const (
	Polar Slot = iota
	OilSlot
	FinePowder
	Grains
)

// Slot says which volume the line fills. Where nothing pours that could
// dissolve them, salt and sugar are grains too.
func (s *Sheet) Slot(l *Line) Slot {
	switch {
	case l.Kind == levigate.Oil:
		return OilSlot
	case l.Sits == levigate.Grain, l.Kind == levigate.Solute && l.Solid && s.Continuous != levigate.PolarContinuous:
		return Grains
	case l.Kind == levigate.Powder:
		return FinePowder
	}
	return Polar
}

// leastPolar is the share of the liquids below which a product counts as
// oil-continuous: a trace of glycerin in a balm makes no gel. A judgement of
// this project.
const leastPolar = 0.03

// Classify says which liquid is continuous.
func (s *Sheet) Classify() levigate.Continuous {
	var poured, solid, oil float64
	for i := range s.Lines {
		l := &s.Lines[i]
		if l.Opened == nil {
			continue
		}
		d := l.Density.Mid
		if d == 0 {
			d = 1
		}
		volume := l.Grams / d
		// A surfactant or gum alone is no liquid: only what brings water or solutes
		// makes a polar phase, and what arrives dry only in what is poured.
		switch {
		case l.Kind == levigate.Oil:
			oil += volume
		case l.Sits == levigate.Grain:
		case l.Kind == levigate.Solute && l.Solid:
			solid += volume
		case l.Kind == levigate.Solute:
			oil += volume * l.OilInside
			poured += volume * (1 - l.OilInside)
		}
	}
	polar := poured
	if poured > 0 {
		polar += solid
	}
	switch {
	case polar+oil == 0:
		return levigate.NoLiquid
	case polar < leastPolar*(polar+oil):
		return levigate.OilContinuous
	}
	return levigate.PolarContinuous
}
