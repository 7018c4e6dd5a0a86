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

// Slot says which volume the line fills.
func (l *Line) Slot() Slot {
	switch {
	case l.Kind == levigate.Oil:
		return OilSlot
	case l.Kind == levigate.Powder && l.Sits == levigate.Grain, l.Sits == levigate.Grain:
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
	var polar, poured, oil, solid float64
	for i := range s.Lines {
		l := &s.Lines[i]
		if l.Opened == nil {
			continue
		}
		d := l.Density.Mid
		if d == 0 {
			d = 1
		}
		switch l.Slot() {
		case Polar:
			// A surfactant or gum alone is no liquid: only what brings water or
			// solutes makes a polar phase.
			if l.Kind == levigate.Solute {
				polar += l.Grams / d
				if l.dry() {
					solid += l.Grams / d
				} else {
					poured += l.Grams / d
				}
			}
		case OilSlot:
			oil += l.Grams / d
		default:
			solid += l.Grams / d
		}
	}
	if poured == 0 {
		polar = 0 // crystals that nothing is there to dissolve
	}
	switch {
	case polar+oil == 0, poured+oil < leastLiquid*(poured+oil+solid):
		return levigate.NoLiquid
	case polar < leastPolar*(polar+oil):
		return levigate.OilContinuous
	}
	return levigate.PolarContinuous
}

// dry reports whether a line is poured as crystals or powder. Water in crystals
// is no liquid.
func (l *Line) dry() bool {
	switch l.Material.Form {
	case levigate.Crystals, levigate.FinePow, levigate.Grains:
		return true
	}
	return false
}
