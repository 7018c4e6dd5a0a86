// Package part is what the parts of a formula check share: the sheet they
// work on, the opened raw materials and the readings in force.
//
// A part is one folder beside this one. It says what it needs and what it
// gives; assess runs the parts asked for in order. Nothing here computes a
// figure.
package part

import (
	"fmt"
	"strings"

	"levigate"
	"levigate/work"
)

// Part is one part of a formula check.
type Part struct {
	Name  string
	Gives []string // figure and curve ids, for explain and the register
	Run   func(*Sheet)
}

// Sheet is a check being worked out.
type Sheet struct {
	*levigate.Assessment
	Library  levigate.Library
	Readings []levigate.Reading
	Curves   bool // draw curves too
	Working  bool // record how each figure came about
	Unread   []string

	// Lines are the formula's lines opened; a line that could not be opened
	// has a nil Opened.
	Lines []Line
}

// Line is one opened line.
type Line struct {
	Index   int
	Grams   float64 // per 100 g of the formula
	*Opened         // nil when the raw material is not known
	// Water is what the raw material holds in this check: its own range or the
	// reading that took its place.
	Water      levigate.Range // g per 100 g of the raw material
	WaterCause *work.Cause
	// Density is likewise its own or a reading's, g/mL; Mid 0 when unknown.
	Density *work.Cause
	Sits    levigate.Sits
	// Placed is where a person put a powder: on the line, or in a raw material
	// of the formula's own. Empty leaves its place open.
	Placed levigate.Sits
	// Undissolved is what of the line stays as crystals, g per 100 g of the
	// formula; the water part fills it in.
	Undissolved float64
}

// Recorder starts a working for a figure when one was asked for.
func (s *Sheet) Recorder(title string) *work.Recorder {
	if !s.Working {
		return nil
	}
	return work.NewRecorder(title)
}

// Unopened names the lines that could not be opened, for figures that need
// every line.
func (s *Sheet) Unopened() []string {
	var out []string
	for i := range s.Lines {
		if s.Lines[i].Opened == nil {
			name := s.Formula.Lines[s.Lines[i].Index].Name
			if name == "" {
				name = "an empty line"
			}
			out = append(out, name)
		}
	}
	return out
}

// mostNamed is how many lines a sentence names; each is named at its own line as
// well.
const mostNamed = 5

// First names the first of many, and says how many more there are.
func First(names []string) string {
	if more := len(names) - mostNamed; more > 0 {
		return fmt.Sprintf("%s and %d more", strings.Join(names[:mostNamed], ", "), more)
	}
	return strings.Join(names, ", ")
}

// Needs says what a figure that needs every line lacks; empty when it has all.
func (s *Sheet) Needs() string {
	var out []string
	if names := s.Unopened(); len(names) > 0 {
		out = append(out, "needs the composition of "+First(names))
	}
	if len(s.Unread) > 0 {
		out = append(out, "needs the percentage of "+First(s.Unread))
	}
	if len(out) == 0 && s.nothing() {
		out = append(out, "no line has a percentage")
	}
	return strings.Join(out, "; ")
}

// nothing holds of a sheet that weighs nothing: it holds no water either, and a
// water activity of it would be a claim about no product.
func (s *Sheet) nothing() bool {
	for i := range s.Lines {
		if s.Lines[i].Grams > 0 {
			return false
		}
	}
	return true
}
