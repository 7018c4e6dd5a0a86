package formulafile

import (
	"strings"

	"github.com/goccy/go-yaml/token"

	"levigate"
)

// fault is a parser's message in plain words; %s stands for what was met.
type fault struct{ begins, text, help string }

// faults translates the messages of the parser that a person can cause. Their
// wording is the library's: a test on the broken files tells when it changes.
var faults = []fault{
	{"non-map value is specified", "%s stands where a key with a colon is expected", "write key: value, with a space after the colon, and line it up with the other keys"},
	{"value is not allowed in this context. map key-value is pre-defined", "%s follows a key that has its value already", "begin it in the same column as the key above; put a text that has a colon or goes over several lines in quotes"},
	{"value is not allowed in this context", "%s does not belong here", "see that it begins in the right column and that keys end in a colon and a space"},
	{"unexpected key name", "%s is not followed by a colon", "write key: value on one line, with a space after the colon"},
	{"map key definition includes an implicit line break", "%s goes over a line's end where a key is expected", "end the entry before it with a comma or bracket"},
	{"mapping value is not allowed in this context", "%s is a second key on one line", "give each key its own line; put a text that has a colon in quotes"},
	{"',' or '}' must be specified", "a comma is missing before %s", "write a comma between the entries, or put the whole text in quotes"},
	{"',' or ']' must be specified", "a comma is missing before %s", "write a comma between the items, or put the whole text in quotes"},
	{"expected sequence element", "%s has no item before it", "write the item, or delete the comma"},
	{"found an invalid key for this map", "a colon stands here with no key before it", "write key: value"},
	{"undefined map key", "a colon stands here with no key before it", "write key: value"},
	{"could not find flow map content", "%s does not belong between { and }", "write key: value, and a comma between the entries"},
	{"could not find map value", "the key before this colon has no value", "write the value, or delete the key"},
	{"block sequence entries are not allowed", "a list begins on the same line as its key", "begin each item on a line of its own, with - and a space"},
	{"could not find end character of double-quoted text", "the quote that opens here is never closed", `write " where the text ends`},
	{"could not find end character of single-quoted text", "the quote that opens here is never closed", "write ' where the text ends; an apostrophe within it is written twice"},
	{"found unknown escape character", "a backslash in double quotes is followed by a character that means nothing", `write \\ for a backslash, or use single quotes`},
	{"not enough length for escaped", `\u or \U in double quotes is cut short`, "write the character itself"},
	{"found unexpected character after high surrogate", `\u in double quotes gives half a character`, "write the character itself"},
	{"found unexpected low surrogate", `\u in double quotes gives half a character`, "write the character itself"},
	{"found unexpected document separator", "a line of three dashes or dots stands within a quoted text", "close the quote before it"},
	{"could not find multi-line content", "| or > is not followed by an indented text", "indent the text by two spaces"},
	{"invalid header option", "| or > is followed by something else on its line", "begin the text on the next line, indented by two spaces"},
	{"invalid number of indent", "this line is indented less than the first of its text", "indent all lines of the text alike"},
	{"unexpected end content", "text follows the end of the document", "keep one formula to a file"},
	{"value cannot be placed after document separator", "text follows --- on its line", "begin on the next line"},
}

// syntax reports what the parser could not read.
func (r *reader) syntax(at levigate.Place, message string, t *token.Token) {
	met := "this"
	if t != nil && strings.TrimSpace(t.Value) != "" {
		met = quote(t.Value)
	}
	switch {
	case strings.HasSuffix(message, "is a reserved character"):
		r.report(at, "put the text in quotes", "a text can't begin with @ or `")
		return
	case t != nil && t.Type == token.StringType && t.Prev != nil && t.Prev.Type == token.SingleQuoteType:
		r.report(at, "an apostrophe within single quotes is written twice; or use double quotes", "%s follows a text in single quotes", met)
		return
	case t != nil && t.Type == token.StringType && t.Prev != nil && t.Prev.Type == token.DoubleQuoteType:
		r.report(at, `a double quote within double quotes is written \"; otherwise write a comma`, "%s follows a text in double quotes", met)
		return
	}
	for _, f := range faults {
		if strings.HasPrefix(message, f.begins) {
			r.report(at, f.help, "%s", strings.ReplaceAll(f.text, "%s", met))
			return
		}
	}
	r.report(at, "compare the line with the others; texts with : # , [ ] { } in them need quotes", "%s can't be read here (%s)", met, message)
}

// quote shows what was met in the file, shortened.
func quote(s string) string { return `"` + short(s) + `"` }

// short keeps a message readable whatever stands in the file.
func short(s string) string {
	const most = 40
	line, _, more := strings.Cut(strings.TrimSpace(s), "\n")
	if c := []rune(line); len(c) > most {
		line, more = string(c[:most]), true
	}
	if more {
		line += "…"
	}
	return line
}
