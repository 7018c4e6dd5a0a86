package formulafile

import (
	"slices"
	"strconv"
	"strings"

	"levigate"
)

// edition looks at the first thing the file says. It reports whether the rest
// can be read by this edition's rules; if not, nothing else is worth saying.
func (r *reader) edition(root value) bool {
	const help = "begin the file with levigate: " + Edition
	if root.kind() != isGroup {
		r.report(levigate.Place{}, help+" and write key: value pairs", "the file is %s, not a formula", root.kind())
		return false
	}
	entries := root.entries()
	at := slices.IndexFunc(entries, func(e entry) bool { return e.key == "levigate" })
	if at < 0 {
		r.report(levigate.Place{}, help, "the file does not say that it is a formula")
		// Another program's file would give a page of unknown keys.
		return slices.ContainsFunc(entries, func(e entry) bool { return e.key == "lines" || e.key == "product" })
	}
	e := entries[at]
	v := value{node: e.value, at: begins(e.value, e.at), name: e.key, like: Edition, needs: true}
	if k := v.kind(); k != isText {
		r.wrong(v, "write levigate: "+Edition)
		return k == isEmpty
	}
	word, number, _ := strings.Cut(v.raw(), "/")
	n, err := strconv.Atoi(number)
	switch {
	case v.raw() == Edition:
		return true
	case word == editionWord && err == nil && n > editionNumber:
		r.report(v.at, "take a newer version of the program, or ask for the file as "+Edition, "the file is of edition %s; this program reads %s", quote(v.raw()), Edition)
	case strings.EqualFold(strings.TrimSpace(v.raw()), Edition):
		r.report(v.at, "write levigate: "+Edition, "levigate is %s", quote(v.raw()))
		return true
	default:
		r.report(v.at, "write levigate: "+Edition+" if this is a formula", "%s is not an edition of the formula file", quote(v.raw()))
	}
	return false
}
