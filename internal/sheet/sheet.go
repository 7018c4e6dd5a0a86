package sheet

import (
	"fmt"

	"levigate"
)

// Sheet is what a document was found to mean.
type Sheet struct {
	// Formula holds the lines whose percentage can be read. A name that means
	// nothing yet keeps its place, so that the total and the q.s. line are right.
	Formula *levigate.Formula
	Rows    []string // Rows[i] is the row of Formula.Lines[i]
	// Unread are the rows left out because their percentage cannot be read.
	Unread []Unread
	// Temperature is what the check is asked for at, °C; nil when nothing is
	// typed.
	Temperature *float64
	Problems    []Problem
}

// Unread is a line left out, with what is in it as far as that is known.
type Unread struct {
	Row   string
	Name  string
	Match levigate.Match
}

// Problem is one fault in what was typed: in which cell, what, and what to do.
// The list is "head", "lines" or "making"; a fault in the head has no row.
type Problem struct {
	List, Row, Field string
	Text, Help       string
}

// reader collects what is wrong while a document is read.
type reader struct {
	problems []Problem
}

// cell is where one text stands.
type cell struct{ list, row, field string }

func (r *reader) report(at cell, help, format string, args ...any) {
	r.problems = append(r.problems, Problem{at.list, at.row, at.field, fmt.Sprintf(format, args...), help})
}
