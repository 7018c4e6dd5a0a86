package rules

import (
	"slices"
	"strings"
	"unicode"
)

// neverSaid lists what no text of this program says: each promises what only a
// laboratory, an assessor or the law can.
var neverSaid = []string{
	"safe", "safely", "unsafe",
	"compliant", "non-compliant", "noncompliant",
	"protected",
	"self-preserving", "self preserving",
	"no preservative needed", "needs no preservative", "no preservative is needed", "preservative-free",
}

// NeverSaid lists the forbidden words a text holds, as whole words and whatever
// their case; "safety" is a word of its own and may stand.
func NeverSaid(text string) []string {
	var out []string
	spaced := " " + strings.Join(strings.FieldsFunc(strings.ToLower(text), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '-'
	}), " ") + " "
	for _, w := range neverSaid {
		if strings.Contains(spaced, " "+w+" ") && !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return out
}
