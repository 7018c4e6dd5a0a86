package formulafile

import (
	"cmp"
	"fmt"
	"slices"

	"levigate"
)

// reader collects what is wrong while a file is read.
type reader struct {
	problems []levigate.Problem
}

func (r *reader) failed() bool { return len(r.problems) > 0 }

// report notes one fault: where, what to do, and what is wrong. A place that
// the parser does not know is the beginning of the file.
func (r *reader) report(at levigate.Place, help, format string, args ...any) {
	at.Line, at.Column = max(at.Line, 1), max(at.Column, 1)
	r.problems = append(r.problems, levigate.Problem{Place: at, Text: fmt.Sprintf(format, args...), Help: help})
}

// sorted gives the problems in the order of the file, the first MaxProblems of
// them: whoever has more than that has one fault repeated.
func (r *reader) sorted() []levigate.Problem {
	slices.SortStableFunc(r.problems, func(a, b levigate.Problem) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	rest := len(r.problems) - MaxProblems
	if rest <= 0 {
		return r.problems
	}
	last := levigate.Problem{
		Place: r.problems[MaxProblems].Place,
		Text:  fmt.Sprintf("%d more problems from here on are not listed", rest),
		Help:  "settle those above and read the file again",
	}
	return append(r.problems[:MaxProblems:MaxProblems], last)
}
