package formulafile

import (
	"fmt"
	"strings"
	"unicode"

	"levigate"
)

// Format writes problems as text, two lines each:
//
//	FILE:LINE:COLUMN: what
//	  help: what to do
//
// A problem without a place stands at 1:1.
func Format(problems []levigate.Problem, name string) string {
	var b strings.Builder
	for _, p := range problems {
		fmt.Fprintf(&b, "%s:%s\n", oneLine(name), oneLine(p.String()))
		if p.Help != "" {
			fmt.Fprintf(&b, "  help: %s\n", oneLine(p.Help))
		}
	}
	return b.String()
}

// oneLine keeps text from the file, or a file's name, from breaking the form
// or moving a terminal's cursor.
func oneLine(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return '\uFFFD'
		}
		return r
	}, s)
}
