package render

import (
	"regexp"
	"slices"
	"strings"
	"unicode"
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
	for _, word := range glue(strings.Fields(text)) {
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

// units are the words that must not be parted from the number before them.
var units = []string{"%", "g", "mL", "kg", "°C", "K", "min", "h", "g/100", "g/mL", "g/g"}

// glue joins a number and its unit into one word.
func glue(words []string) []string {
	out := words[:0]
	for _, w := range words {
		last := len(out) - 1
		bare := strings.TrimRight(w, ".,;:)")
		if last >= 0 && slices.Contains(units, bare) && unicode.IsDigit(lastOf(out[last])) {
			out[last] += " " + w
			continue
		}
		out = append(out, w)
	}
	return out
}

// Tie keeps a number and its unit on one line of a page.
func Tie(text string) string { return parted.ReplaceAllString(text, "$1\u00a0$2") }

var parted = regexp.MustCompile(`(\d) (%|°C|(?:g|mL|kg|K|min|h)\b)`)

func lastOf(word string) rune {
	r, _ := utf8.DecodeLastRuneInString(word)
	return r
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
