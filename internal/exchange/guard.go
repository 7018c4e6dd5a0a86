package exchange

import (
	"bytes"
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"levigate"
	"levigate/formulafile"
)

// reader collects prices and what is wrong with them.
type reader struct {
	name     string
	today    time.Time
	columns  []column // what each column of the file is
	commas   bool     // numbers of this file are written with a decimal comma
	problems []levigate.Problem
}

// report notes one fault. A place that is not known is the file's beginning.
func (r *reader) report(at levigate.Place, help, format string, args ...any) {
	at.Line, at.Column = max(at.Line, 1), max(at.Column, 1)
	r.problems = append(r.problems, levigate.Problem{Place: at, Text: fmt.Sprintf(format, args...), Help: help})
}

func (r *reader) full() bool { return len(r.problems) > MaxProblems }

// sorted gives the problems in the order of the file, and says how many are left
// out where nobody would read on.
func (r *reader) sorted() []levigate.Problem {
	slices.SortStableFunc(r.problems, func(a, b levigate.Problem) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	if len(r.problems) <= MaxProblems {
		return r.problems
	}
	last := levigate.Problem{Place: r.problems[MaxProblems].Place, Text: "more problems from here on are not listed",
		Help: "settle those above and read the list again"}
	return append(r.problems[:MaxProblems:MaxProblems], last)
}

// guard looks at the bytes before anything reads them, and gives the text with
// plain line ends.
func (r *reader) guard(data []byte) (string, bool) {
	start := levigate.Place{}
	if len(data) > MaxBytes {
		r.report(start, fmt.Sprintf("a price list takes some kilobytes, at most %d KiB are read; is this the right file?", MaxBytes>>10), "the file is larger than %d KiB", MaxBytes>>10)
		return "", false
	}
	if kind := formulafile.Packed(data); kind != "" {
		r.report(start, `save it as CSV with the encoding UTF-8 and name that file`, "the file is %s, not a price list as text", kind)
		return "", false
	}
	data = bytes.TrimPrefix(data, []byte("\uFEFF"))
	if at, b, ok := formulafile.NotUTF8(data); !ok {
		r.report(at, `save the list again as "CSV UTF-8" (it may now be "Windows" or "Latin-1")`, "byte 0x%02X is not UTF-8 text", b)
		return "", false
	}
	return strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(string(data)), true
}
