package formulafile

import (
	"strings"

	"github.com/goccy/go-yaml/token"
)

// relocate corrects the columns of bare texts. The library counts from the end
// of the line, blanks not included, and is off by as many as there are.
func relocate(text string, tokens token.Tokens) {
	var line []rune
	at, rest := 0, text
	for _, t := range tokens {
		if t.Type == token.SingleQuoteType || t.Type == token.DoubleQuoteType || t.Value == "" {
			continue
		}
		for at < t.Position.Line {
			var s string
			s, rest, _ = strings.Cut(rest, "\n")
			line = []rune(s)
			at++
		}
		word, _, _ := strings.Cut(strings.TrimSpace(t.Value), " ")
		word, _, _ = strings.Cut(word, "\n")
		for c := min(t.Position.Column, len(line)); at == t.Position.Line && c > 0; c-- {
			if begin(line[c-1:], word) {
				t.Position.Column = c
				break
			}
		}
	}
}

// begin reports whether the characters begin with a word.
func begin(line []rune, word string) bool {
	n := 0
	for _, c := range word {
		if n == len(line) || line[n] != c {
			return false
		}
		n++
	}
	return true
}
