package rules

import (
	"iter"
	"slices"
	"strings"

	"levigate"
	"levigate/work"
)

// Subject is what a rule looks at: the formula check, with the questions rules
// ask of it.
type Subject struct {
	*levigate.Assessment
}

// Materials goes through the lines whose raw material is known. Lines are
// counted from 0, here and in a finding's At.
func (s *Subject) Materials() iter.Seq2[int, *levigate.Material] {
	return func(yield func(int, *levigate.Material) bool) {
		lines := s.Formula.Lines
		for i := range lines {
			if m := lines[i].Match.Material; m != nil && !yield(i, m) {
				return
			}
		}
	}
}

// Lines lists the lines whose raw material fits.
func (s *Subject) Lines(fits func(i int, m *levigate.Material) bool) []int {
	var out []int
	for i, m := range s.Materials() {
		if fits(i, m) {
			out = append(out, i)
		}
	}
	return out
}

// Grams is what a line brings to 100 g of the formula.
func (s *Subject) Grams(line int) float64 { return s.Formula.Lines[line].Percent.Float() }

// Name is what the maker calls a line's raw material: as typed, unless she
// typed its code.
func (s *Subject) Name(line int) string {
	l := &s.Formula.Lines[line]
	if m := l.Match.Material; m != nil && m.Name != "" && strings.EqualFold(l.Name, m.Code) {
		return m.Name
	}
	return l.Name
}

// Names lists the names of lines, each once.
func (s *Subject) Names(lines []int) []string {
	var out []string
	for _, i := range lines {
		if n := s.Name(i); !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	return out
}

// Figure is a figure of the check, nil when it was not asked for.
func (s *Subject) Figure(id string) *work.Figure { return s.Figures.Get(id) }

// Activity is the water activity.
func (s *Subject) Activity() *work.Figure { return s.Figure("water.activity") }

// Water is the water the formula holds, g per 100 g.
func (s *Subject) Water() float64 {
	var sum float64
	for i := range s.Composition.Held {
		if h := &s.Composition.Held[i]; h.Kind == levigate.Water {
			sum += h.Grams.Typical
		}
	}
	return sum
}

// undissolved ends the name of a held solute that stays behind as crystals.
const undissolved = " (undissolved)"

// Undissolved lists the solutes of which a part stays behind as crystals.
func (s *Subject) Undissolved() []levigate.Held {
	var out []levigate.Held
	for _, h := range s.Composition.Held {
		if h.Kind == levigate.Solute && strings.HasSuffix(h.Name, undissolved) {
			out = append(out, h)
		}
	}
	return out
}

// HasRole reports whether a raw material in the formula plays a role.
func (s *Subject) HasRole(role string) bool {
	for _, m := range s.Materials() {
		if m.HasRole(role) {
			return true
		}
	}
	return false
}

// Sits is where the powder of a line is at rest: as the line says, else as its
// raw material does.
func (s *Subject) Sits(line int) levigate.Sits {
	l := &s.Formula.Lines[line]
	if l.Sits == "" && l.Match.Material != nil {
		return l.Match.Material.Sits
	}
	return l.Sits
}
