package part

import (
	"slices"
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
	// OilInside is the share of its volume that is oil held in a polar liquid: a
	// ready gel base brings drops, not liquid to feed them into.
	OilInside float64
	// Solid says that what would be polar liquid arrives as dry crystals or
	// powder: salt in oil makes no polar liquid until something dissolves it.
	Solid bool
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
	if o.Kind == levigate.Solute {
		o.OilInside = oilInside(m, o.Dry)
	}
	o.Solid = solid(m, o.Dry)
	return o
}

// oilInside is the share of a raw material's volume that is oil, from the
// densities on file of its parts.
func oilInside(m *levigate.Material, dry []levigate.Share) float64 {
	oil, all := 0.0, m.Water.Typical/plainWater
	for _, s := range dry {
		d := plainWater
		if s.Substance != nil && s.Substance.Density.Typical > 0 {
			d = s.Substance.Density.Typical
		}
		volume := s.Percent.Typical * (100 - m.Water.Typical) / 100 / d
		all += volume
		if KindOf(s.Substance) == levigate.Oil {
			oil += volume
		}
	}
	if all == 0 || oil < leastInside*all {
		return 0
	}
	return oil / all
}

// plainWater is a density near enough for what has none on file, g/mL.
const plainWater = 1.0

// leastInside is the share of oil below which it is dissolved or a trace.
const leastInside = 0.05

// solid reports whether a raw material's solutes arrive as dry solids.
func solid(m *levigate.Material, dry []levigate.Share) bool {
	if m.Dissolved {
		return false
	}
	if m.Origin == levigate.OfFormula {
		// A file does not say how its raw materials arrive: what crystallises and
		// is all but dry comes as crystals.
		return m.Water.Typical < Dampest && len(dry) > 0 && !slices.ContainsFunc(dry, func(s levigate.Share) bool {
			return s.Substance == nil || s.Substance.Isotherm == nil || s.Substance.Isotherm.Saturation == 0
		})
	}
	return m.Form == levigate.Crystals || m.Form == levigate.Grains || m.Form == levigate.FinePow
}

// Dampest is the water at which a raw material of solutes is a solution and no
// longer crystals, %. Hydrates reach 9; the strongest syrups hold 15.
const Dampest = 12

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
