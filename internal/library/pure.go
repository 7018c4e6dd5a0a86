package library

import (
	"slices"

	"levigate"
	"levigate/refdata"
)

// pure is the raw material that an INCI name by itself stands for: the
// substance dry and pure. How it looks and is handled (form, size, role,
// cautions) it takes from a raw material that is the same substance.
func pure(s *levigate.Substance) *levigate.Material {
	m := &levigate.Material{
		Name: s.INCI, Origin: levigate.Pure, Form: formOf(s.Kind),
		Declared: []levigate.Share{{INCI: s.INCI, Substance: s, Percent: levigate.Exactly(100)}},
		Density:  s.Density,
		// Dry and pure is what the name says, not what anybody found.
		Water: levigate.Exactly(0), Grade: refdata.ByDefinition, Source: "dry and pure, as its name says",
		Marks: levigate.Marks{},
	}
	if s.Kind == levigate.Water {
		m.Water = levigate.Exactly(100)
	}
	if p, ok := s.Marks["density"]; ok {
		m.Marks["density"] = p
	}
	if k := kin(s); k != nil {
		inherit(m, k, s.Kind)
	}
	if s.Kind == levigate.Powder && m.Sits == "" {
		m.Sits = levigate.InOil
	}
	return m
}

func inherit(m, from *levigate.Material, kind levigate.Kind) {
	m.Role, m.Cautions = from.Role, from.Cautions
	if from.Water.Typical < 1 || kind == levigate.Powder || kind == levigate.Water {
		m.Form = from.Form // a solution's form is not that of what is dissolved
	}
	if kind == levigate.Powder {
		m.Sits, m.Size = from.Sits, from.Size
		if p, ok := from.Marks["size_um"]; ok {
			m.Marks["size_um"] = p
		}
		return
	}
	// Sugar and salt are sold as scrub grains; by their bare name they dissolve.
	m.Role = slices.DeleteFunc(slices.Clone(m.Role), func(r string) bool { return r == "scrub" })
}

// kin is the first embedded raw material that is this substance and nothing
// else but water.
func kin(s *levigate.Substance) *levigate.Material {
	for _, m := range refdata.Materials() {
		only := true
		for _, share := range m.Declared {
			only = only && (share.Substance == s || share.IsWater())
		}
		if only && m.Declared[0].Substance == s {
			return m
		}
	}
	return nil
}

func formOf(k levigate.Kind) levigate.Form {
	switch k {
	case levigate.Solute:
		return levigate.Crystals
	case levigate.Powder:
		return levigate.FinePow
	case levigate.Other:
		return levigate.Solid
	}
	return levigate.Liquid
}
