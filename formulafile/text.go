package formulafile

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// text reads a text of one line. Digits are text too: phase: 1.
func (r *reader) text(v value, max int) string {
	s, ok := r.anyText(v, max)
	if ok && strings.Contains(s, "\n") {
		r.report(v.at, "write it on one line", "%s has more than one line", v.name)
		return ""
	}
	return s
}

// prose reads a text that may have several lines. Blank ends are not kept.
func (r *reader) prose(v value, max int) string {
	s, _ := r.anyText(v, max)
	return s
}

func (r *reader) anyText(v value, max int) (string, bool) {
	if k := v.kind(); k != isText && k != isNumber {
		help := "write a text, like " + v.like
		if k == isTruth || k == isOdd {
			help = `put it in quotes if the word is meant: "` + short(v.raw()) + `"`
		}
		r.wrong(v, help)
		return "", false
	}
	s := tidy(v.raw())
	if s == "" {
		r.report(v.at, v.orLeave("write a text, like "+v.like), "%s is empty", v.name)
		return "", false
	}
	if n := utf8.RuneCountInString(s); n > max {
		r.report(v.at, "shorten it", "%s is %d characters long, more than %d", v.name, n, max)
		return "", false
	}
	// Escapes in quotes bring in what the guard keeps out of the file itself.
	for _, c := range s {
		if c != '\n' && hidden(c) != "" {
			r.report(v.at, "write the text without the backslash escape", "%s holds %s", v.name, hidden(c))
			return "", false
		}
		if c == utf8.RuneError {
			r.report(v.at, "write the character itself", "%s holds an escape that is no character", v.name)
			return "", false
		}
	}
	return s, true
}

// tidy gives a text the one form that it is kept in: no tabs, no blanks at the
// ends of its lines, no blank lines around it.
func tidy(s string) string {
	s = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\t", " ").Replace(s)
	if !strings.Contains(s, "\n") {
		return strings.TrimSpace(s)
	}
	lines := strings.Split(s, "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	return strings.TrimSpace(strings.Join(lines, "\n"))
}

// choice reads a text that must be one of several.
func (r *reader) choice(v value, from []string) string {
	s, ok := r.anyText(v, MaxName)
	if !ok || slices.Contains(from, s) {
		return s
	}
	help := "write one of " + list(from, "or")
	if near := nearestWord(s, from); near != "" {
		help = "did you mean " + near + "?"
		if len(from) < 10 {
			help += " (it is one of " + list(from, "or") + ")"
		}
	}
	r.report(v.at, help, "%s %s is not known", v.name, quote(s))
	return ""
}

// words reads a list of words in small letters.
func (r *reader) words(v value, one string) []string {
	var out []string
	r.rows(v, MaxWords, one, func(item value) {
		item.like = strings.Trim(v.like, "[]")
		s := r.text(item, MaxCode)
		switch {
		case s == "":
		case plainWord(strings.ToLower(s)) && !plainWord(s):
			r.report(item.at, "write "+strings.ToLower(s), "%s %s has capital letters", one, quote(s))
		case !plainWord(s):
			r.report(item.at, "write small letters, digits and hyphens only, like "+item.like, "%s %s is not a plain word", one, quote(s))
		case slices.Contains(out, s):
			r.report(item.at, "keep one of them", "%s %s is listed twice", one, s)
		default:
			out = append(out, s)
		}
	})
	return out
}

// plainWord is what the schema states as ^[a-z0-9]+(-[a-z0-9]+)*$.
func plainWord(s string) bool {
	for part := range strings.SplitSeq(s, "-") {
		if part == "" || strings.Trim(part, "abcdefghijklmnopqrstuvwxyz0123456789") != "" {
			return false
		}
	}
	return true
}

// truth reads true or false.
func (r *reader) truth(v value) (yes, ok bool) {
	if v.kind() != isTruth {
		r.wrong(v, "write true or false, without quotes")
		return false, false
	}
	return strings.EqualFold(v.raw(), "true"), true
}
