// Package assess is the formula check: compose, calculate, judge.
//
// It is a list of parts, one folder each. The caller names the parts it wants;
// a keystroke asks for those that need only the formula.
package assess

import (
	"slices"

	"levigate"
	"levigate/internal/assess/composition"
	"levigate/internal/assess/label"
	"levigate/internal/assess/part"
	"levigate/internal/assess/structure"
	"levigate/internal/assess/water"
	"levigate/rules"
)

// parts in the order they run: each may use the figures of those before it.
var parts = []part.Part{composition.Part, water.Part, structure.Part, label.Part}

// Request is what to check and how much of it.
type Request struct {
	Formula    *levigate.Formula // resolved against Library
	Library    levigate.Library
	Conditions levigate.Conditions
	Readings   []levigate.Reading
	Parts      []string // names; empty for all
	Curves     bool
	Working    bool // record how every figure came about
	All        bool // also findings that hold and rows not judged
	Problems   []levigate.Problem
	// Unread names lines that stand on the sheet and could not be read. They are
	// not in Formula; figures that need every line are missing because of them.
	Unread []string
}

// Parts lists the parts' names in order.
func Parts() []string {
	out := make([]string, len(parts))
	for i, p := range parts {
		out[i] = p.Name
	}
	return out
}

// Gives lists the figure and curve ids a part gives.
func Gives(name string) []string {
	for _, p := range parts {
		if p.Name == name {
			return p.Gives
		}
	}
	return nil
}

// Check runs the parts asked for and the rules over what they gave.
func Check(r Request) *levigate.Assessment {
	s := &part.Sheet{
		Assessment: &levigate.Assessment{Formula: r.Formula, Conditions: r.Conditions, Problems: r.Problems, Readings: r.Readings},
		Library:    r.Library, Readings: r.Readings, Curves: r.Curves, Working: r.Working, Unread: r.Unread,
	}
	s.Figures = make(levigate.Figures, 0, 24)
	s.OpenLines()
	s.Continuous = s.Classify()
	for _, p := range parts {
		// Composition is what every other part stands on.
		if len(r.Parts) == 0 || p.Name == composition.Part.Name || slices.Contains(r.Parts, p.Name) {
			p.Run(s)
		}
	}
	s.Findings = rules.Judge(s.Assessment, r.All)
	return s.Assessment
}
