package rules

import (
	"strings"

	"levigate"
	"levigate/quantity"
	"levigate/work"
)

// The words examples are written in. They build a formula check by hand, small
// enough to read, without a library and without a calculation: a rule is shown
// exactly what it looks at and nothing else.

type entry func(a *levigate.Assessment)

type trait func(m *levigate.Material)

// sheet makes a formula check at 25 °C of a product whose continuous liquid is
// polar, unless an entry says otherwise.
func sheet(entries ...entry) func() *levigate.Assessment {
	return func() *levigate.Assessment {
		a := &levigate.Assessment{
			Formula:    &levigate.Formula{Product: "other-leave-on"},
			Conditions: levigate.Conditions{Temperature: levigate.Room},
			Continuous: levigate.PolarContinuous,
		}
		for _, e := range entries {
			e(a)
		}
		compose(a)
		return a
	}
}

// line is a raw material at a percentage. Without traits it is a plain one
// that holds no water.
func line(percent, name string, traits ...trait) entry {
	return func(a *levigate.Assessment) {
		m := &levigate.Material{Name: name}
		for _, t := range traits {
			t(m)
		}
		l := levigate.Line{Name: name, Percent: quantity.MustDecimal(percent)}
		l.Match.Material = m
		a.Formula.Lines = append(a.Formula.Lines, l)
	}
}

// aqua is plain water, written as such.
func aqua(percent string) entry {
	return line(percent, "Purified water", of("Aqua", 100), water(100))
}

// unknown is a line whose name means nothing to the library.
func unknown(percent, name string, nearest ...string) entry {
	return func(a *levigate.Assessment) {
		l := levigate.Line{Name: name, Percent: quantity.MustDecimal(percent)}
		l.Match.Nearest = nearest
		a.Composition.Unopened = append(a.Composition.Unopened, len(a.Formula.Lines))
		a.Formula.Lines = append(a.Formula.Lines, l)
	}
}

// alone is an INCI name used as a line for what the library knows as delivered
// with water.
func alone(percent, inci, delivered string, waterPercent float64) entry {
	return func(a *levigate.Assessment) {
		line(percent, inci, of(inci, 100))(a)
		m := &levigate.Material{Name: delivered, Water: levigate.Exactly(waterPercent)}
		a.Formula.Lines[len(a.Formula.Lines)-1].Match.Delivered = m
	}
}

// filledUp makes the line before it the q.s. line.
func filledUp() entry {
	return func(a *levigate.Assessment) { a.Formula.Lines[len(a.Formula.Lines)-1].QS = true }
}

// of declares a substance in a raw material, with its classes.
func of(inci string, percent float64, classes ...string) trait {
	kind := levigate.Other
	if inci == "Aqua" {
		kind = levigate.Water
	}
	return declares(&levigate.Substance{INCI: inci, Kind: kind, Classes: classes}, levigate.Exactly(percent))
}

// declares declares a substance with a range.
func declares(s *levigate.Substance, percent levigate.Range) trait {
	return func(m *levigate.Material) {
		m.Declared = append(m.Declared, levigate.Share{INCI: s.INCI, Substance: s, Percent: percent})
	}
}

func water(percent float64) trait {
	return func(m *levigate.Material) { m.Water = levigate.Exactly(percent) }
}
func is(class ...string) trait {
	return func(m *levigate.Material) { m.Classes = append(m.Classes, class...) }
}
func role(role string) trait { return func(m *levigate.Material) { m.Role = append(m.Role, role) } }
func code(code string) trait { return func(m *levigate.Material) { m.Code = code } }
func grains() trait          { return func(m *levigate.Material) { m.Sits = levigate.Grain } }
func caution(c string) trait {
	return func(m *levigate.Material) { m.Cautions = append(m.Cautions, c) }
}

// usual is the range a raw material is usually put in at, %.
func usual(low, high float64) trait {
	return func(m *levigate.Material) { m.Use = levigate.Range{Typical: (low + high) / 2, Low: low, High: high} }
}
func belongs(b levigate.Belongs) trait { return func(m *levigate.Material) { m.Belongs = b } }

// soaks is a powder's oil absorption, g per 100 g.
func soaks(typical, low, high float64) trait {
	return func(m *levigate.Material) {
		m.OilAbsorption = levigate.Range{Typical: typical, Low: low, High: high}
	}
}

// each changes the substances declared so far.
func each(change func(x *levigate.Substance)) trait {
	return func(m *levigate.Material) {
		for i := range m.Declared {
			change(m.Declared[i].Substance)
		}
	}
}

func melts(celsius float64) trait {
	return each(func(x *levigate.Substance) { x.Melting = levigate.Exactly(celsius) })
}
func hlb(values ...float64) trait {
	return each(func(x *levigate.Substance) { x.HLB = exactly(values) })
}
func requires(values ...float64) trait {
	return each(func(x *levigate.Substance) { x.RequiredHLB = exactly(values) })
}
func dissolves(in string, grams float64) trait {
	return each(func(x *levigate.Substance) {
		x.Solubility = append(x.Solubility, levigate.Solubility{In: in, Stated: levigate.Stated{Range: levigate.Exactly(grams)}})
	})
}

func exactly(values []float64) []levigate.Stated {
	out := make([]levigate.Stated, len(values))
	for i, v := range values {
		out[i].Range = levigate.Exactly(v)
	}
	return out
}
func product(p string) entry { return func(a *levigate.Assessment) { a.Formula.Product = p } }
func at(celsius float64) entry {
	return func(a *levigate.Assessment) { a.Conditions.Temperature = celsius }
}
func sold(market string) entry {
	return func(a *levigate.Assessment) { a.Formula.Markets = append(a.Formula.Markets, market) }
}
func nearEyes() entry { return func(a *levigate.Assessment) { a.Formula.Use.Eye = true } }
func oily() entry     { return func(a *levigate.Assessment) { a.Continuous = levigate.OilContinuous } }

func claim(c string) entry {
	return func(a *levigate.Assessment) { a.Formula.Claims = append(a.Formula.Claims, c) }
}

// figure is a figure with its band, in the unit its id goes by.
func figure(id string, value, low, high float64) entry {
	return func(a *levigate.Assessment) {
		f := work.Figure{ID: id, Title: titleOf(id), Value: value, Low: low, High: high, Unit: quantity.GramPer100g, State: work.Good}
		if id == "water.activity" {
			f.Unit = quantity.One
		}
		a.Figures = append(a.Figures, f)
	}
}

// activity is the water activity with its band.
func activity(value, low, high float64) entry { return figure("water.activity", value, low, high) }

// outOfRange marks the figure before it.
func outOfRange() entry {
	return func(a *levigate.Assessment) { a.Figures[len(a.Figures)-1].State = work.OutOfRange }
}

// missing is a figure that could not be calculated.
func missing(id string, why ...string) entry {
	return func(a *levigate.Assessment) {
		a.Figures = append(a.Figures, work.None(id, titleOf(id), quantity.One, nil, why...))
	}
}

// stays adds crystals that do not dissolve.
func stays(name string, grams float64, from ...int) entry {
	return func(a *levigate.Assessment) {
		a.Composition.Held = append(a.Composition.Held, levigate.Held{
			Kind: levigate.Solute, Name: name + undissolved, Grams: levigate.Exactly(grams), From: from,
		})
	}
}

func titleOf(id string) string {
	_, name, _ := strings.Cut(id, ".")
	return strings.ToUpper(name[:1]) + strings.ReplaceAll(name[1:], "-", " ")
}

// compose adds up what the lines declare and the water they hold.
func compose(a *levigate.Assessment) {
	held := levigate.Held{Kind: levigate.Water, Name: "water"}
	place := map[string]int{}
	for i := range a.Formula.Lines {
		l := &a.Formula.Lines[i]
		m := l.Match.Material
		if m == nil {
			continue
		}
		g := l.Percent.Float()
		held.Grams.Typical += g * m.Water.Typical / 100
		for _, s := range m.Declared {
			at, seen := place[s.INCI]
			if !seen {
				at = len(a.Composition.Contained)
				place[s.INCI] = at
				a.Composition.Contained = append(a.Composition.Contained, levigate.Contained{INCI: s.INCI, Substance: s.Substance})
			}
			c := &a.Composition.Contained[at]
			c.Percent.Typical += g * s.Percent.Typical / 100
			c.Percent.Low += g * s.Percent.Low / 100
			c.Percent.High += g * s.Percent.High / 100
			c.From = append(c.From, i)
		}
	}
	a.Composition.Held = append(a.Composition.Held, held)
}
