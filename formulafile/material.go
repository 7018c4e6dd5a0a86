package formulafile

import (
	"strings"

	"levigate"
	"levigate/cite"
)

const materialLike = "{name: Oat flour, composition: [{inci: Avena Sativa Kernel Flour, percent: 100}]}"

// grades lists the words for evidence, best first.
var grades = []string{
	cite.MeasuredHere.String(), cite.MeasuredBySupplier.String(), cite.Reviewed.String(),
	cite.Compiled.String(), cite.Estimated.String(), cite.Assumed.String(),
}

// materials reads the raw materials of the file's own. Two that go by the same
// name could not be told apart on a line.
func (r *reader) materials(v value) []*levigate.Material {
	var out []*levigate.Material
	taken := map[string]levigate.Place{}
	claim := func(name string, at levigate.Place) {
		key := strings.ToLower(name)
		if first, has := taken[key]; has {
			r.report(at, "give each raw material a name and a code of its own", "a raw material called %s is described already in line %d, column %d", quote(name), first.Line, first.Column)
		} else if name != "" {
			taken[key] = at
		}
	}
	r.rows(v, MaxMaterials, "a raw material", func(item value) {
		item.like = materialLike
		m := r.material(item)
		out = append(out, m)
		claim(m.Name, item.at)
		if !strings.EqualFold(m.Code, m.Name) {
			claim(m.Code, item.at)
		}
	})
	return out
}

func (r *reader) material(v value) *levigate.Material {
	m := &levigate.Material{Origin: levigate.OfFormula, Place: v.at}
	r.group(v, "a raw material", []field{
		{name: "name", like: "Oat flour", needs: true, read: func(v value) { m.Name = r.text(v, MaxName) }},
		{name: "code", like: "OAT-1", read: func(v value) { m.Code = r.text(v, MaxCode) }},
		{name: "density", like: "1.26 g/mL", read: func(v value) {
			if d, ok := r.measure(v, densitySpan); ok {
				m.Density = levigate.Exactly(d)
			}
		}},
		{name: "composition", like: "[" + shareLike + "]", needs: true, read: func(v value) { m.Declared = r.composition(v) }},
		{name: "water", like: "{percent: 12, low: 10, high: 14}", read: func(v value) { m.Water = r.water(v) }},
		{name: "isotherm", like: isothermLike, read: func(v value) { m.Isotherm = r.isotherm(v) }},
		{name: "sits", like: "oil", read: func(v value) { m.Sits = levigate.Sits(r.choice(v, places)) }},
		{name: "evidence", like: "measured by supplier", read: func(v value) {
			// An unknown word was reported; it then counts as assumed.
			m.Grade, _ = cite.ParseGrade(r.choice(v, grades))
		}},
		{name: "source", like: "supplier's data sheet", read: func(v value) { m.Source = r.text(v, MaxSource) }},
	})
	m.Form = form(m.Sits)
	if m.Isotherm != nil {
		m.Isotherm.Grade = m.Grade
		if m.Isotherm.Name == "" {
			m.Isotherm.Name = m.Name
		}
	}
	return m
}

// form guesses how the material arrives: the file does not say.
func form(sits levigate.Sits) levigate.Form {
	switch sits {
	case levigate.InOil, levigate.InPolyol:
		return levigate.FinePow
	case levigate.Grain:
		return levigate.Grains
	}
	return levigate.Liquid
}
