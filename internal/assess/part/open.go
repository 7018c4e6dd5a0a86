package part

import (
	"sync"

	"levigate"
	"levigate/cite"
	"levigate/work"
)

// Opened is a raw material taken apart once and kept: what does not depend on
// the formula it stands in.
type Opened struct {
	Material *levigate.Material
	Declared []levigate.Share
	Dry      []levigate.Share // % of the dry part
	Water    work.Cause       // its water, as a cause
	Density  work.Cause       // its density, as a cause; Mid 0 when unknown
	Shares   []work.Cause     // one a dry share that has a range
	ShareOf  []int            // the dry share each of Shares moves
	Kind     levigate.Kind    // what it is by volume: polar liquid counts as solute
}

var opened sync.Map // *levigate.Material -> *Opened

// Open takes a raw material apart. The embedded ones never change and are few,
// so the outcome is kept; others are opened afresh each time, or the store
// would grow with every edit.
func Open(m *levigate.Material) *Opened {
	if m.Origin != levigate.Embedded && m.Origin != levigate.Pure {
		return open(m)
	}
	if o, ok := opened.Load(m); ok {
		return o.(*Opened)
	}
	o, _ := opened.LoadOrStore(m, open(m))
	return o.(*Opened)
}

func open(m *levigate.Material) *Opened {
	m = complete(m)
	o := &Opened{Material: m, Declared: m.Declared, Dry: m.DryShares()}
	key := m.Code
	if key == "" {
		key = m.Name
	}
	o.Water = work.Cause{
		Key: "material/" + key + "/water", Name: "water in " + m.Name,
		Low: m.Water.Low, Mid: m.Water.Typical, High: m.Water.High,
		Grade: gradeOf(m, "water"), Settle: "dry a weighed sample of the lot, or ask the supplier for its loss on drying",
	}
	if m.Origin == levigate.OfFormula && !m.Water.Known() {
		o.Water.NotStated = true
		o.Water.Name += " (not stated, counted as dry)"
	}
	o.Density = work.Cause{
		Key: "material/" + key + "/density", Name: "density of " + m.Name,
		Low: m.Density.Low, Mid: m.Density.Typical, High: m.Density.High,
		Grade: gradeOf(m, "density"), Settle: "weigh a known volume of it",
	}
	for i, s := range o.Dry {
		if s.Percent.Low < s.Percent.High {
			o.Shares = append(o.Shares, work.Cause{
				Key: "material/" + key + "/share/" + s.INCI, Name: s.INCI + " in " + m.Name,
				Low: s.Percent.Low, Mid: s.Percent.Typical, High: s.Percent.High,
				Grade: m.Grade, Settle: "ask the supplier for the composition of the lot",
			})
			o.ShareOf = append(o.ShareOf, i)
		}
	}
	o.Kind = kindOf(m, o.Dry)
	return o
}

// gradeOf turns how a field is known into an evidence grade, never better
// than the material's own.
func gradeOf(m *levigate.Material, field string) cite.Grade {
	p, ok := m.Marks[field]
	if !ok {
		return m.Grade
	}
	switch {
	case p.From.Key == "levigate-judgement":
		return cite.Assumed
	case p.Mark == cite.Read:
		return cite.Compiled
	}
	// A typical value of the trade, recalled or not, is an estimate.
	return cite.Estimated
}

// kindOf says which of the product's volumes a raw material fills: by the
// kind its dry mass is mostly made of, with water and solutes as one polar
// liquid.
func kindOf(m *levigate.Material, dry []levigate.Share) levigate.Kind {
	var by [5]float64
	by[0] = m.Water.Typical
	for _, s := range dry {
		g := s.Percent.Typical * (100 - m.Water.Typical) / 100
		switch KindOf(s.Substance) {
		case levigate.Water, levigate.Solute:
			by[0] += g
		case levigate.Oil:
			by[1] += g
		case levigate.Powder:
			by[2] += g
		default:
			by[3] += g
		}
	}
	kinds := [...]levigate.Kind{levigate.Solute, levigate.Oil, levigate.Powder, levigate.Other}
	best := 0
	for i := range kinds {
		if by[i] > by[best] {
			best = i
		}
	}
	return kinds[best]
}

// KindOf is a substance's kind; one the library does not hold counts as Other.
func KindOf(s *levigate.Substance) levigate.Kind {
	if s == nil {
		return levigate.Other
	}
	return s.Kind
}

// complete fills in, on a copy, what a raw material leaves to be understood: the
// water it holds is at least the water it declares, and its density is that of
// its parts where each has one on file.
func complete(m *levigate.Material) *levigate.Material {
	var declared levigate.Range
	var volume, grams float64
	for _, s := range m.Declared {
		if s.IsWater() {
			declared.Typical += s.Percent.Typical
			declared.Low += s.Percent.Low
			declared.High += s.Percent.High
		}
		if s.Substance != nil && s.Substance.Density.Typical > 0 {
			volume += s.Percent.Typical / s.Substance.Density.Typical
			grams += s.Percent.Typical
		}
	}
	water, density := m.Water, m.Density
	if water.Typical < declared.Typical {
		water = declared
	}
	if !density.Known() && grams > 99.99 {
		d := grams / volume
		density = levigate.Range{Typical: d, Low: 0.97 * d, High: 1.03 * d}
	}
	if water == m.Water && density == m.Density {
		return m
	}
	c := *m
	c.Water, c.Density = water, density
	return &c
}
