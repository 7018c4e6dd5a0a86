package formulafile

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"levigate"
)

// characters looks for what an eye does not see and a parser trips over.
func (r *reader) characters(text string) {
	line := 0
	for s := range strings.Lines(text) {
		line++
		if r.tooMany() {
			return
		}
		at := levigate.Place{Line: line, Column: 1}
		if n := utf8.RuneCountInString(s); n > MaxLineLength {
			r.report(at, "break it up: one line of the formula to a line of the file", "this line is %d characters long, more than %d", n, MaxLineLength)
			continue
		}
		indent := true
		for _, c := range s {
			switch {
			case indent && c == '\t':
				r.report(at, "indent with spaces, two for each step", "a tab is used for indentation")
				indent = false // one message a line
			case indent && c != ' ' && space(c):
				r.report(at, "delete it and type plain spaces; pages on the web often carry such spaces", "the line is indented with a special space (%U)", c)
				indent = false
			case c == '\n' || c == '\t':
			case hidden(c) != "":
				r.report(at, "delete it", "%s stands here", hidden(c))
			case c == utf8.RuneError:
				r.report(at, "write the character that should be here", "a character was lost when this file was saved (%U)", c)
			}
			indent = indent && c == ' '
			at.Column++
		}
	}
}

// tooMany stops the search where nobody would read on.
func (r *reader) tooMany() bool { return len(r.problems) > MaxProblems }

// space reports whether c is a space that YAML does not know as one.
func space(c rune) bool {
	return c == 0xA0 || c == 0x1680 || 0x2000 <= c && c <= 0x200A || c == 0x202F || c == 0x205F || c == 0x3000
}

// hidden names a character that has no place in a formula: controls, and those
// that are not seen or make a line read other than it is.
func hidden(c rune) string {
	switch {
	case c == 0:
		return "a zero byte"
	case c < 0x20 || 0x7F <= c && c <= 0x9F:
		return fmt.Sprintf("a control character (%U)", c)
	case c == 0xAD || c == 0x200B || c == 0x2060 || c == 0xFEFF:
		return fmt.Sprintf("a character that can't be seen (%U)", c)
	case c == 0x2028 || c == 0x2029:
		return fmt.Sprintf("a hidden line break (%U)", c)
	case 0x202A <= c && c <= 0x202E || 0x2066 <= c && c <= 0x2069:
		return fmt.Sprintf("a character that turns the text's direction (%U)", c)
	}
	return ""
}

// marks counts the characters that can become tokens. Most stand in plain
// text; what matters is that there are never more tokens than about twice as
// many.
func marks(text string) int {
	n := 0
	for i := 0; i < len(text); i++ {
		switch text[i] {
		case '\n', '[', ']', '{', '}', ',', ':', '-', '?', '"', '\'', '#', '&', '*', '!', '|', '>', '%':
			n++
		}
	}
	return n
}
