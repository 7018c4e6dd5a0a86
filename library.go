package levigate

import (
	"fmt"
	"strings"
)

// Library finds raw materials and substances by name. A formula's own raw
// materials come first, then the workspace's, then the embedded ones; by code,
// INCI name, or name, ignoring case and accents.
type Library interface {
	// Find looks a name up for a line. When nothing matches, Match.Material is
	// nil and Match.Nearest lists the closest names.
	Find(name string, own []*Material) Match
	// Substance looks an INCI name (or an alias of it) up.
	Substance(inci string) (*Substance, bool)
	// Isotherm finds the isotherm that "like: NAME" means: a row of the tables, a
	// substance, or a raw material that is one substance or has its own.
	Isotherm(name string) (*Isotherm, bool)
}

// Match is what a line's name was found to mean.
type Match struct {
	Material *Material
	Nearest  []string
	// Delivered is set when an INCI name was used alone, which means dry and
	// pure, but the library knows the substance as delivered with water.
	Delivered *Material
}

// Problem is one fault in what was written: where, what, and what to do.
type Problem struct {
	Place
	Text string
	Help string
}

func (p Problem) String() string {
	line, column := p.Line, p.Column
	if line == 0 {
		line, column = 1, 1
	}
	return fmt.Sprintf("%d:%d: %s", line, column, p.Text)
}

// Resolve looks up every line and every substance of the formula's own raw
// materials, and returns what was not found.
func (f *Formula) Resolve(lib Library) []Problem {
	var out []Problem
	for _, m := range f.Materials {
		out = append(out, m.resolve(lib)...)
	}
	for i := range f.Lines {
		l := &f.Lines[i]
		if l.Name == "" {
			continue
		}
		l.Match = lib.Find(l.Name, f.Materials)
		if l.Match.Material == nil {
			out = append(out, Problem{l.Place, fmt.Sprintf("raw material %q is not known", l.Name), nearest(l.Match.Nearest)})
		}
	}
	return out
}

// resolve looks up what a raw material of the formula's own names.
func (m *Material) resolve(lib Library) (out []Problem) {
	if s, ok := lib.Substance(m.Name); ok && strings.EqualFold(s.INCI, strings.TrimSpace(m.Name)) {
		out = append(out, Problem{m.Place, fmt.Sprintf("raw material %q is named like the INCI name of a substance", m.Name),
			"give it a name of your own: the INCI name alone means that substance, dry and pure"})
	}
	for _, shares := range [][]Share{m.Declared, m.Dry} {
		for i := range shares {
			s := &shares[i]
			if s.Substance, _ = lib.Substance(s.INCI); s.Substance == nil {
				if near := lib.Find(s.INCI, nil).Nearest; len(near) > 0 {
					s.Nearest = near[0]
				}
			}
		}
	}
	if iso := m.Isotherm; iso != nil && iso.Model == "" {
		found, ok := lib.Isotherm(iso.Name)
		if !ok {
			return append(out, Problem{m.Place, fmt.Sprintf("the isotherm of %q is said to be like %q, which has none on file", m.Name, iso.Name),
				"name a substance or raw material of the library that has one, or write gab: or linear:"})
		}
		m.Isotherm = found
	}
	return out
}

func nearest(names []string) string {
	if len(names) == 0 {
		return "write an INCI name, or describe the raw material under materials:"
	}
	s := "did you mean "
	for i, n := range names {
		switch {
		case i > 0 && i == len(names)-1:
			s += " or "
		case i > 0:
			s += ", "
		}
		s += fmt.Sprintf("%q", n)
	}
	return s + "? Or describe it under materials:"
}
