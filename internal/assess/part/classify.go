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

// leastLiquid is the share of the volume below which liquids only bind a dry
// mix: a scented bath salt is no oil, a pressed powder no paste. Grains thrown
// together leave about a third of the volume between them; with a quarter there
// is air in the gaps. A judgement of this project.
const leastLiquid = 0.25

// Classify says which liquid is continuous.
func (s *Sheet) Classify() levigate.Continuous {
	var poured, crystals, dry, oil float64
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
		case l.Kind == levigate.Powder, l.Sits == levigate.Grain:
			dry += volume
		case l.Kind == levigate.Solute && l.Solid:
			crystals += volume
		case l.Kind == levigate.Solute:
			oil += volume * l.OilInside
			poured += volume * (1 - l.OilInside)
		}
	}
	polar := poured
	if poured > 0 {
		polar += crystals
	}
	switch {
	case polar+oil == 0, poured+oil < leastLiquid*(poured+oil+crystals+dry):
		return levigate.NoLiquid
	case polar < leastPolar*(polar+oil):
		return levigate.OilContinuous
	}
	return levigate.PolarContinuous
}
