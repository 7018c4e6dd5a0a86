package part

import (
	"time"

	"levigate"
	"levigate/work"
)

// rest is how long the slowest exchange of water takes: scrub grains wetted by
// oil give and take over hours. Common practice: judge after 48 h.
const rest = 48 * time.Hour

// OpenLines opens every line and puts readings of raw materials in force.
func (s *Sheet) OpenLines() {
	s.Lines = make([]Line, len(s.Formula.Lines))
	for i := range s.Formula.Lines {
		fl := &s.Formula.Lines[i]
		l := &s.Lines[i]
		l.Index = i
		l.Grams = fl.Percent.Float()
		m := fl.Match.Material
		if m == nil {
			s.Composition.Unopened = append(s.Composition.Unopened, i)
			continue
		}
		l.Opened = s.opened(i, m)
		l.Water, l.WaterCause = l.Opened.Material.Water, &l.Opened.Water
		l.Density = &l.Opened.Density
		l.Sits = m.Sits
		switch {
		case fl.Sits != "":
			l.Sits, l.Placed = fl.Sits, fl.Sits
		case m.Origin == levigate.OfFormula:
			l.Placed = m.Sits
		}
		if len(s.Readings) > 0 {
			s.measured(l)
		}
	}
}

// opened takes a raw material apart, once where it stands on several lines: it
// is one lot and errs one way.
func (s *Sheet) opened(line int, m *levigate.Material) *Opened {
	for j := range line {
		if s.Formula.Lines[j].Match.Material == m {
			return s.Lines[j].Opened
		}
	}
	return Open(m)
}

// measured puts readings of the raw material in place of its own ranges.
func (s *Sheet) measured(l *Line) {
	if r, ok := s.ofMaterial(l.Material, PropertyWater); ok {
		c := replaced(l.Opened.Water, r)
		l.Water = levigate.Range{Typical: c.Mid, Low: c.Low, High: c.High}
		l.WaterCause = c
	}
	if r, ok := s.ofMaterial(l.Material, PropertyDensity); ok {
		l.Density = replaced(l.Opened.Density, r)
	}
}

func (s *Sheet) ofMaterial(m *levigate.Material, property string) (levigate.Reading, bool) {
	r, ok := s.Reading("material", m.Name, property)
	if !ok && m.Code != "" {
		r, ok = s.Reading("material", m.Code, property)
	}
	return r, ok
}

// replaced is a cause that keeps its key but stands on a reading.
func replaced(was work.Cause, r levigate.Reading) *work.Cause {
	c := Cause(r)
	c.Key, c.Name = was.Key, was.Name+", "+c.Name
	return c
}
