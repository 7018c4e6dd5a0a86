package render

import (
	"strings"
	"unicode/utf8"
)

// wide is how many columns a text takes.
func wide(s string) int { return utf8.RuneCountInString(s) }

// wrap breaks text at spaces into lines of at most width columns. A word that
// is wider stands on a line of its own: cutting a chemical name or an equation
// inside a word would falsify it.
func wrap(text string, width int) []string {
	var out []string
	line := ""
	for _, word := range strings.Fields(text) {
		switch {
		case line == "":
			line = word
		case wide(line)+1+wide(word) <= width:
			line += " " + word
		default:
			out = append(out, line)
			line = word
		}
	}
	if line != "" || len(out) == 0 {
		out = append(out, line)
	}
	return out
}

// Prose wraps text to width with an indent before the first line and one
// before the others.
func Prose(text string, width int, first, rest string) string {
	var b strings.Builder
	indent := first
	for _, line := range wrap(text, width-max(wide(first), wide(rest))) {
		b.WriteString(strings.TrimRight(indent+line, " ") + "\n")
		indent = rest
	}
	return b.String()
}

func pad(s string, width int) string {
	return s + strings.Repeat(" ", max(width-wide(s), 0))
}

func padLeft(s string, width int) string {
	return strings.Repeat(" ", max(width-wide(s), 0)) + s
}
