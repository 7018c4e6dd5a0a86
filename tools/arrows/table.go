package arrows

import (
	"fmt"
	"slices"
	"strings"
)

const (
	root     = "root"     // the package at the top of the module
	anything = "anything" // on the right: no limit
)

// line is one arrow: what from may import.
type line struct {
	from string
	to   []string
}

type table []line

// parse reads lines of the form "from -> to to to". A from named twice is an
// error, since only one of the two could count.
func parse(text string) (table, error) {
	var t table
	for raw := range strings.Lines(text) {
		raw = strings.TrimSpace(raw)
		if raw == "" {
			continue
		}
		left, right, ok := strings.Cut(raw, "->")
		from := strings.Fields(left)
		if !ok || len(from) != 1 {
			return nil, fmt.Errorf("%q: write one name, ->, and what it may import", raw)
		}
		if t.names(from[0]) {
			return nil, fmt.Errorf("%q: %s has a line already", raw, from[0])
		}
		t = append(t, line{from[0], strings.Fields(right)})
	}
	return t, nil
}

// closed reports the first name on a right-hand side that has no line of its
// own. It guards against a misspelt arrow, which would allow nothing and look
// as if it did.
func (t table) closed() error {
	for _, l := range t {
		for _, to := range l.to {
			if to != anything && !t.names(to) {
				return fmt.Errorf("%s -> %s: %s has no line of its own", l.from, to, to)
			}
		}
	}
	return nil
}

func (t table) names(from string) bool {
	return slices.ContainsFunc(t, func(l line) bool { return l.from == from })
}

// find gives the line for a package: its own, else the nearest x/* above it.
func (t table) find(pkg string) (line, bool) {
	best, found := line{}, false
	for _, l := range t {
		if l.from == pkg {
			return l, true
		}
		if covers(l.from, pkg) && len(l.from) > len(best.from) {
			best, found = l, true
		}
	}
	return best, found
}

// allows says whether the line lets pkg, a package of ours, be imported.
func (l line) allows(pkg string) bool {
	return slices.ContainsFunc(l.to, func(to string) bool {
		return to == anything || covers(to, pkg)
	})
}

// allowsModule says whether the line lets an import path of others be used.
func (l line) allowsModule(path string) bool {
	return slices.ContainsFunc(l.to, func(to string) bool {
		return to == anything || path == to || strings.HasPrefix(path, to+"/")
	})
}

// allowed prints the right-hand side for a message.
func (l line) allowed() string {
	if len(l.to) == 0 {
		return "none"
	}
	return strings.Join(l.to, " ")
}

// covers says whether a name in the table stands for a package: calc/* stands
// for all below calc, and not for calc itself.
func covers(name, pkg string) bool {
	if above, ok := strings.CutSuffix(name, "*"); ok {
		return strings.HasPrefix(pkg, above)
	}
	return name == pkg
}
