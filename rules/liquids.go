package rules

import "levigate"

// declared adds up the shares of a kind over the whole formula, % w/w.
func (s *Subject) declared(kind levigate.Kind) float64 {
	var sum float64
	for i := range s.Composition.Contained {
		if c := &s.Composition.Contained[i]; c.Substance != nil && c.Substance.Kind == kind {
			sum += c.Percent.Typical
		}
	}
	return sum
}

// emulsifying is the share from which a substance that is neither water,
// solute, oil nor powder may hold an emulsion together, % w/w.
const emulsifying = 0.1

// mayEmulsify reports whether something in the formula could hold oil and water
// together: a line that plays the part, a surfactant or a gum, lanolin, a soap
// made on the spot, or a substance nobody knows.
func (s *Subject) mayEmulsify() bool {
	for _, role := range []string{"emulsifier", "cleanser", "conditioner", "base"} {
		if s.HasRole(role) {
			return true
		}
	}
	for i := range s.Composition.Contained {
		c := &s.Composition.Contained[i]
		switch {
		case c.Substance == nil, c.Substance.Is("lanolin"), c.Substance.Is("alkali"):
			return true
		case c.Substance.Kind == levigate.Other && c.Percent.Typical >= emulsifying &&
			!c.Substance.Is("plant-extract") && !c.Substance.Is("hydrosol"):
			return true
		}
	}
	return false
}

// holds reports whether a line brings a class or a substance at all; amounts
// says how much.
func (s *Subject) holds(kind string) bool {
	for _, m := range s.Materials() {
		if m.Is(kind) {
			return true
		}
		for i := range m.Declared {
			if share := &m.Declared[i]; share.INCI == kind || share.Substance != nil && share.Substance.INCI == kind {
				return true
			}
		}
	}
	return false
}

// poured is what the liquid lines bring, g per 100 g, and which lines bring it.
// Sugar in grains is no liquid; a hydrosol is the water it holds.
type poured struct {
	water, solute, oil float64
	wet, polar         []int // lines with water; with water or solute
}

// polarGrams is water and solute together.
func (p *poured) polarGrams() float64 { return p.water + p.solute }

// mostlyHeld is the water held from which a raw material is poured, whatever
// form is on file, g per 100 g.
const mostlyHeld = 50.0

func (s *Subject) poured() poured {
	var p poured
	for i, m := range s.Materials() {
		if m.Form != levigate.Liquid && m.Water.Typical < mostlyHeld {
			continue
		}
		var water, solute, oil float64 // % of the raw material
		for j := range m.Declared {
			share := &m.Declared[j]
			switch {
			case share.Substance == nil:
			case share.Substance.Kind == levigate.Water:
				water += share.Percent.Typical
			case share.Substance.Kind == levigate.Solute:
				solute += share.Percent.Typical
			case share.Substance.Kind == levigate.Oil:
				oil += share.Percent.Typical
			}
		}
		if held := m.Water.Typical; water == 0 && held > 0 {
			water, solute = held, solute*(100-held)/100
		}
		k := s.Grams(i) / 100
		p.water, p.solute, p.oil = p.water+k*water, p.solute+k*solute, p.oil+k*oil
		if k > 0 && water >= mostlyHeld {
			p.wet = append(p.wet, i)
		}
		if k > 0 && water+solute >= mostlyHeld {
			p.polar = append(p.polar, i)
		}
	}
	return p
}

// mostly reports whether half of a raw material and more is of a kind.
func mostly(m *levigate.Material, kind levigate.Kind) bool {
	var percent float64
	for i := range m.Declared {
		if x := m.Declared[i].Substance; x != nil && x.Kind == kind {
			percent += m.Declared[i].Percent.Typical
		}
	}
	return percent >= 50
}

// kind says of what kind the substances declared so far are.
func kind(k levigate.Kind) trait {
	return func(m *levigate.Material) {
		for i := range m.Declared {
			m.Declared[i].Substance.Kind = k
		}
	}
}

func form(f levigate.Form) trait { return func(m *levigate.Material) { m.Form = f } }

// oil is a liquid oil.
func oil(percent, name string) entry {
	return line(percent, name, of(name, 100, "plant-oil"), kind(levigate.Oil), form(levigate.Liquid))
}

// polyol is a liquid polyol without water.
func polyol(percent, name string) entry {
	return line(percent, name, of(name, 100, "polyol"), kind(levigate.Solute), form(levigate.Liquid))
}

// emulsifier is a raw material that plays the part and holds no water.
func emulsifier(percent, name string) entry {
	return line(percent, name, of(name, 100), role("emulsifier"))
}
