package formulafile

import (
	"strings"

	"github.com/goccy/go-yaml/token"
)

// escapes reports \x, \u and \U without their digits, as in "C:\users". The
// library takes any characters for digits and makes another text of them.
func (r *reader) escapes(text string, tokens token.Tokens) {
	if !strings.Contains(text, `\x`) && !strings.Contains(text, `\u`) && !strings.Contains(text, `\U`) {
		return
	}
	line, rest := 1, text
	for _, t := range tokens {
		if t.Type != token.DoubleQuoteType || r.tooMany() {
			continue
		}
		for ; line < t.Position.Line; line++ {
			_, rest, _ = strings.Cut(rest, "\n")
		}
		if e := badEscape(rest, t.Position.Column); e != "" {
			r.report(placeOf(t), `write \\ for a backslash, or use single quotes`, "%s in double quotes is not followed by a character's number", e)
		}
	}
}

// badEscape looks through the text in double quotes that begins in a column.
func badEscape(text string, column int) string {
	digits := map[rune]int{'x': 2, 'u': 4, 'U': 8}
	const (
		before = iota
		within
		escaped
	)
	state, left, escape := before, 0, rune(0)
	for _, c := range text {
		switch {
		case state == before:
			if column--; column == 0 {
				state = within
			}
		case left > 0 && !strings.ContainsRune("0123456789abcdefABCDEF", c):
			return `\` + string(escape)
		case left > 0:
			left--
		case state == escaped:
			state, left, escape = within, digits[c], c
		case c == '\\':
			state = escaped
		case c == '"':
			return ""
		}
	}
	return ""
}
