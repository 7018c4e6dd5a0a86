package formulafile

import (
	"github.com/goccy/go-yaml/token"
)

// frame is one group or list that is open where the structure check stands.
type frame struct {
	opened  *token.Token
	column  int  // of its keys or dashes; 0 inside brackets
	entries int  // seen so far
	told    bool // that it has too many
}

// structure checks brackets, depth and sizes over the tokens alone. The parser
// that follows recurses for each key and level, so both must be bounded here.
func (r *reader) structure(tokens token.Tokens) {
	s := structure{reader: r}
	for i, t := range tokens {
		if r.tooMany() {
			return
		}
		switch t.Type {
		case token.MappingStartType, token.SequenceStartType:
			s.push(frame{opened: t})
		case token.MappingEndType, token.SequenceEndType:
			s.close(t)
		case token.CollectEntryType:
			if s.brackets > 0 {
				s.entry(t)
				s.between(tokens[i-1], t)
			}
		case token.SequenceEntryType:
			if s.brackets == 0 {
				s.row(t)
				s.indented(t, tokens[i+1:])
			}
		case token.MappingValueType:
			switch {
			case s.brackets > 0 && i > 0 && i+1 < len(tokens):
				s.spaced(tokens[i-1], t, tokens[i+1])
			case s.brackets == 0 && (i == 0 || tokens[i-1].Position.Line != t.Position.Line):
				s.keyless(tokens[max(i-1, 0)], t)
			case s.brackets == 0:
				s.row(tokens[i-1])
				s.indented(tokens[i-1], tokens[i+1:])
			}
		}
	}
	for _, f := range s.open {
		if f.column == 0 {
			r.report(placeOf(f.opened), "write "+closing(f.opened)+" where it ends; a # after a space begins a comment and hides what follows", "%s is never closed", f.opened.Value)
		}
	}
}

type structure struct {
	*reader
	open     []frame
	brackets int
	deep     bool // depth was reported
}

func (s *structure) push(f frame) {
	s.open = append(s.open, f)
	if f.column == 0 {
		s.brackets++
	}
	if len(s.open) > MaxDepth && !s.deep {
		s.deep = true
		s.report(placeOf(f.opened), "a formula needs five levels; take out the extra brackets or indentation", "groups and lists are nested more than %d deep", MaxDepth)
	}
}

// row takes a key or a dash outside brackets: its column says what it closes.
func (s *structure) row(t *token.Token) {
	column := t.Position.Column
	for n := len(s.open); n > 0 && s.open[n-1].column > column; n-- {
		s.open = s.open[:n-1]
	}
	if n := len(s.open); n == 0 || s.open[n-1].column < column {
		s.push(frame{opened: t, column: column})
	}
	s.entry(t)
}

func (s *structure) entry(t *token.Token) {
	f := &s.open[len(s.open)-1]
	if f.entries++; f.entries > MaxEntries && !f.told {
		f.told = true
		s.report(placeOf(t), "a formula has at most a few hundred lines; is this the right file?", "more than %d entries stand in one group or list", MaxEntries)
	}
}

func (s *structure) close(t *token.Token) {
	n := len(s.open)
	if n == 0 || s.open[n-1].column != 0 {
		s.report(placeOf(t), "delete it, or write the opening bracket", "%s closes nothing", t.Value)
		return
	}
	opened := s.open[n-1].opened
	if closing(opened) != t.Value {
		s.report(placeOf(t), "write "+closing(opened), "%s closes the %s of line %d, column %d", t.Value, opened.Value, opened.Position.Line, opened.Position.Column)
	}
	s.open = s.open[:n-1]
	s.brackets--
}

func closing(opened *token.Token) string {
	if opened.Type == token.MappingStartType {
		return "}"
	}
	return "]"
}
