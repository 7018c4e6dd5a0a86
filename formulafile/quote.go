package formulafile

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// group writes entries between braces: key, value, key, value. Empty values
// are left out.
func group(pairs ...string) string {
	var out []string
	for i := 0; i+1 < len(pairs); i += 2 {
		if pairs[i+1] != "" {
			out = append(out, pairs[i]+": "+pairs[i+1])
		}
	}
	return "{" + strings.Join(out, ", ") + "}"
}

// words writes a list of words; nothing for an empty one.
func words(list []string) string {
	if len(list) == 0 {
		return ""
	}
	out := make([]string, len(list))
	for i, s := range list {
		out[i] = scalar(s)
	}
	return "[" + strings.Join(out, ", ") + "]"
}

// scalar writes a text so that every YAML reader takes it for that text, bare
// where it can be; nothing for an empty one.
func scalar(s string) string {
	s = tidy(s)
	if s == "" || bare(s) {
		return s
	}
	var b strings.Builder
	b.WriteByte('"')
	for _, c := range s {
		switch {
		case c == '"' || c == '\\':
			b.WriteByte('\\')
			b.WriteRune(c)
		case c == '\n':
			b.WriteString(`\n`)
		case hidden(c) != "" && c <= 0xFFFF:
			fmt.Fprintf(&b, `\u%04X`, c)
		default:
			b.WriteRune(c)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// block writes a text of several lines under its key, each indented; one of a
// single line as any other.
func block(s, indent string) string {
	s = tidy(s)
	if !strings.Contains(s, "\n") {
		return scalar(s)
	}
	// What the guard would stop at in the file itself goes in as an escape.
	fresh := true
	for _, c := range s {
		if c != '\n' && (hidden(c) != "" || c == utf8.RuneError || fresh && space(c)) {
			return scalar(s)
		}
		fresh = c == '\n' || fresh && c == ' '
	}
	var b strings.Builder
	b.WriteString("|")
	for line := range strings.SplitSeq(s, "\n") {
		b.WriteByte('\n')
		if line != "" {
			b.WriteString(indent + line)
		}
	}
	return b.String()
}

// bare reports whether a text needs no quotes: it begins with a letter, has
// nothing with a meaning in it, and is no word that some reader takes for
// true, false or nothing. Whole numbers are bare too; steps read better so.
func bare(s string) bool {
	if digitsOnly(s) && (s == "0" || s[0] != '0') && len(s) < 10 {
		return true
	}
	switch strings.ToLower(s) {
	case "true", "false", "yes", "no", "on", "off", "y", "n", "null", "nan", "inf":
		return false
	}
	for i, c := range s {
		switch {
		case unicode.IsLetter(c):
		case i == 0:
			return false
		case unicode.IsDigit(c) || unicode.IsMark(c):
		case strings.ContainsRune(" -./()%+&'°²³–", c):
		default:
			return false
		}
	}
	return true
}
