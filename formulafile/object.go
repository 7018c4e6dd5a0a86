package formulafile

import (
	"slices"
	"strings"
)

// field is one key that a group may have.
type field struct {
	name  string
	like  string // an example: what to write when it is missing or wrong
	needs bool
	read  func(value)
}

// group reads the entries of a group in the order they are written. what names
// the group in messages: "a line". It gives the keys that unknown ones were
// taken for: a key written wrongly is one fault, not a missing key as well. So
// is a key without its colon.
func (r *reader) group(v value, what string, fields []field) (meant []string, ok bool) {
	if v.kind() != isGroup {
		r.wrong(v, "write key: value pairs, like "+v.like)
		return nil, false
	}
	seen := make(map[string]entry, len(fields))
	entries := v.entries()
	for i, e := range entries {
		f := slices.IndexFunc(fields, func(f field) bool { return f.name == e.key })
		first, twice := seen[e.key]
		switch {
		case e.alone:
			r.alone(entries, i)
		case twice:
			r.report(e.at, "keep one of them", "the key %s is written twice, first in line %d, column %d", e.key, first.at.Line, first.at.Column)
		case f < 0:
			seen[e.key] = e
			meant = append(meant, r.unknown(e, what, names(fields)))
		default:
			seen[e.key] = e
			fields[f].read(value{node: e.value, at: begins(e.value, e.at), name: e.key, like: fields[f].like, needs: fields[f].needs})
		}
	}
	lone := slices.ContainsFunc(entries, func(e entry) bool { return e.alone })
	for _, f := range fields {
		if _, has := seen[f.name]; f.needs && !has && !lone && !slices.Contains(meant, f.name) {
			r.report(v.at, "add it, like "+f.name+": "+f.like, "%s has no %s", what, f.name)
		}
	}
	return meant, true
}

// unknown reports a key that a group does not have and gives the one it was
// probably meant to be.
func (r *reader) unknown(e entry, what string, known []string) string {
	near := nearestKey(e.key, known)
	help := what + " takes " + list(known, "and")
	if near != "" {
		help = "did you mean " + near + "?"
	}
	r.report(e.at, help, "unknown key %s", quote(e.key))
	return near
}

// alone reports a word between braces that has no colon. Nearly always it is
// what follows a comma within a name or a number.
func (r *reader) alone(entries []entry, i int) {
	e := entries[i]
	if i == 0 || entries[i-1].alone || entries[i-1].value == nil {
		r.report(e.at, "write key: value", "%s stands alone between braces", quote(e.key))
		return
	}
	before := entries[i-1]
	text := value{node: before.value}.raw()
	if digitsOnly(e.key) && digitsOnly(text) {
		r.report(begins(before.value, e.at), "write a point: "+short(text)+"."+short(e.key), "%s %s,%s has a comma", before.key, short(text), short(e.key))
		return
	}
	r.report(e.at, "put the whole text in quotes: "+before.key+`: "`+short(text+", "+e.key)+`"`, "a comma cuts %s off the text before it", quote(e.key))
}

// wrong reports a value of another kind than it should be.
func (r *reader) wrong(v value, help string) {
	if v.kind() == isEmpty {
		help = v.orLeave(help)
	}
	what := string(v.kind())
	switch v.kind() {
	case isText:
		what = "the text " + quote(v.raw())
	case isNumber:
		what = "the number " + quote(v.raw())
	case isTruth, isOdd:
		what = "the word " + quote(v.raw())
	}
	r.report(v.at, help, "%s is %s", v.name, what)
}

// orLeave adds to the help for an empty value what else can be done.
func (v value) orLeave(help string) string {
	if v.needs {
		return help
	}
	return help + ", or leave " + v.name + " out"
}

// rows reads a list, at most max of it. Each item goes by the name given.
func (r *reader) rows(v value, max int, name string, read func(value)) bool {
	if v.kind() != isList {
		r.wrong(v, "write a list, like "+v.like)
		return false
	}
	items := v.items()
	if len(items) > max {
		r.report(items[max].at, "leave some out, or divide the formula", "%s has %d entries, more than %d", v.name, len(items), max)
		items = items[:max]
	}
	for _, item := range items {
		item.name = name
		read(item)
	}
	return true
}

func names(fields []field) []string {
	out := make([]string, len(fields))
	for i, f := range fields {
		out[i] = f.name
	}
	return out
}

// list writes names as a sentence has them.
func list(names []string, last string) string {
	if n := len(names); n > 1 {
		return strings.Join(names[:n-1], ", ") + " " + last + " " + names[n-1]
	}
	return strings.Join(names, "")
}
