package sheet

import (
	"slices"
	"strings"
	"unicode/utf8"

	"levigate"
	"levigate/formulafile"
	"levigate/quantity"
)

// clean is a text of one line without what an eye does not see: pasted cells
// carry line ends, special spaces and characters of no width.
func clean(s string) string {
	return strings.Join(strings.Fields(visible(s)), " ")
}

// prose is a text that may have several lines.
func prose(s string) string {
	lines := strings.Split(strings.NewReplacer("\r\n", "\n", "\r", "\n", "\t", " ").Replace(s), "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(visible(lines[i]), " ")
	}
	return strings.TrimSpace(strings.Join(lines, "\n"))
}

func visible(s string) string {
	return strings.Map(func(c rune) rune {
		switch {
		case c == '\n' || c == '\t' || c == '\r':
			return ' '
		case c == utf8.RuneError || formulafile.Hidden(c) != "":
			return -1
		}
		return c
	}, s)
}

// short is a text that may be so many characters long.
func (r *reader) short(at cell, s string, most int) string {
	if n := utf8.RuneCountInString(s); n > most {
		r.report(at, "shorten it", "%s is %d characters long, more than %d", at.field, n, most)
		return ""
	}
	return s
}

// words reads a list with commas between.
func (r *reader) words(at cell, text string) []string {
	var out []string
	for _, w := range strings.FieldsFunc(text, func(c rune) bool { return c == ',' || c == ';' || c == '\n' }) {
		w = strings.ReplaceAll(strings.ToLower(clean(w)), " ", "-")
		switch {
		case w == "" || slices.Contains(out, w):
		case !plainWord(w) || len(w) > formulafile.MaxCode:
			r.report(at, "write small letters, digits and hyphens only, with commas between", "%q is not a plain word", shown(w))
		case len(out) == formulafile.MaxWords:
			r.report(at, "leave some out", "%s has more than %d words", at.field, formulafile.MaxWords)
			return out
		default:
			out = append(out, w)
		}
	}
	return out
}

func plainWord(s string) bool {
	for part := range strings.SplitSeq(s, "-") {
		if part == "" || strings.Trim(part, "abcdefghijklmnopqrstuvwxyz0123456789") != "" {
			return false
		}
	}
	return true
}

// truth reads yes or no; an empty cell is no.
func (r *reader) truth(at cell, text string) bool {
	switch strings.ToLower(clean(text)) {
	case "", "no", "n", "false", "0":
		return false
	case "yes", "y", "true", "1", "x":
		return true
	}
	r.report(at, "write yes or no", "%s is %q", at.field, shown(text))
	return false
}

// mass reads grams or kilograms.
func (r *reader) mass(at cell, text string) quantity.Decimal {
	s := clean(text)
	if s == "" {
		return quantity.Decimal{}
	}
	const help = "write it with the unit, like 500 g or 5 kg"
	grams, err := levigate.ParseGrams(point(s))
	switch {
	case err != nil:
		fault, advice := parted(err, help)
		r.report(at, advice, "%s: %s", at.field, fault)
	case grams.IsZero():
		r.report(at, "write a size above zero, or leave it empty", "%s is %q", at.field, shown(s))
	}
	return grams
}

// measure reads a number with its unit or without, from low to high.
func (r *reader) measure(at cell, text string, unit quantity.Unit, low, high float64) (float64, bool) {
	s := clean(text)
	if s == "" {
		return 0, false
	}
	v, err := quantity.ParseIn(point(s), unit)
	if err != nil {
		fault, help := parted(err, "write a number in "+string(unit))
		r.report(at, help, "%s: %s", at.field, fault)
		return 0, false
	}
	if !(v >= low && v <= high) {
		r.report(at, "see whether the number and its unit are right", "%s is %q, which is not between %g and %g %s", at.field, shown(s), low, high, unit)
		return 0, false
	}
	return v + 0, true // + 0: no negative zero
}

// choice reads one of several words; spaces may stand for hyphens.
func (r *reader) choice(at cell, text string, from []string) string {
	s := strings.ReplaceAll(strings.ToLower(clean(text)), " ", "-")
	if s == "" || slices.Contains(from, s) {
		return s
	}
	help := "choose one of the list"
	if near := formulafile.NearestWord(s, from); near != "" {
		help = "did you mean " + near + "?"
	} else if len(from) < 10 {
		help = "write one of " + strings.Join(from, ", ")
	}
	r.report(at, help, "%s %q is not known", at.field, shown(s))
	return ""
}

// shown is a text cut to what a message has room for.
func shown(s string) string {
	s = clean(s)
	if r := []rune(s); len(r) > 40 {
		return string(r[:39]) + "…"
	}
	return s
}
