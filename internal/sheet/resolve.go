package sheet

import (
	"fmt"

	"levigate"
)

// Resolve looks up what the names mean and reports those that mean nothing.
// They stay in the formula unopened, so that figures that need them are missing.
func (s *Sheet) Resolve(lib levigate.Library) {
	own := s.Formula.Materials
	mine := (&levigate.Formula{Materials: own}).Resolve(lib)
	for _, p := range mine {
		s.Problems = append(s.Problems, ownProblem(p))
	}
	for _, p := range s.Formula.Resolve(lib)[len(mine):] {
		s.Problems = append(s.Problems, Problem{"lines", s.rowAt(p.Line), "material", p.Text, p.Help})
	}
	for i := range s.Unread {
		u := &s.Unread[i]
		if u.Name == "" {
			continue
		}
		u.Match = lib.Find(u.Name, own)
		if u.Match.Material == nil {
			// The library words what is near; one line in a formula is enough to ask.
			one := &levigate.Formula{Lines: []levigate.Line{{Name: u.Name}}, Materials: own}
			p := one.Resolve(lib)[len(mine):]
			s.Problems = append(s.Problems, Problem{"lines", u.Row, "material", p[0].Text, p[0].Help})
		}
	}
}

// rowAt is the row of the line whose place is n.
func (s *Sheet) rowAt(n int) string {
	for i := range s.Formula.Lines {
		if s.Formula.Lines[i].Place.Line == n {
			return s.Rows[i]
		}
	}
	return ""
}

// Names lists the lines left out as a person knows them.
func (s *Sheet) Names() []string {
	var out []string
	for _, u := range s.Unread {
		if u.Name == "" {
			u.Name = "a line without a name"
		}
		out = append(out, u.Name)
	}
	return out
}

// about names a line for a message.
func about(i int, name string) string {
	if name == "" {
		return fmt.Sprintf("line %d", i+1)
	}
	return fmt.Sprintf("line %d, %s,", i+1, shown(name))
}
