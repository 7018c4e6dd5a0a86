package library

import (
	"strings"
	"sync"

	"levigate"
	"levigate/internal/fold"
	"levigate/refdata"
)

// Library implements levigate.Library. It is read only and safe for use by
// many at once.
type Library struct {
	workspace map[string]*levigate.Material
	names     []name // the workspace's, for near misses
}

var _ levigate.Library = (*Library)(nil)

// New is a library over a workspace's raw materials, which may be none. Those
// whose substances are not resolved are copied and resolved; of two with one
// name the first counts.
func New(workspace []*levigate.Material) *Library {
	l := &Library{workspace: map[string]*levigate.Material{}}
	resolved := make([]*levigate.Material, len(workspace))
	for i, m := range workspace {
		resolved[i] = l.resolve(m)
		l.put(m.Code, resolved[i])
	}
	for _, m := range resolved {
		l.put(m.Name, m)
		l.names = append(l.names, named(m.Name, m))
	}
	return l
}

func (l *Library) put(name string, m *levigate.Material) {
	if key := fold.String(name); key != "" && l.workspace[key] == nil {
		l.workspace[key] = m
	}
}

// resolve looks up the substances of a stored raw material on a copy of it:
// what the store hands out is shared.
func (l *Library) resolve(m *levigate.Material) *levigate.Material {
	c := *m
	for _, shares := range []*[]levigate.Share{&c.Declared, &c.Dry} {
		*shares = append([]levigate.Share(nil), *shares...)
		for i := range *shares {
			s := &(*shares)[i]
			if s.Substance == nil {
				s.Substance, _ = l.Substance(s.INCI)
			}
		}
	}
	return &c
}

// Find looks a line's name up.
func (l *Library) Find(name string, own []*levigate.Material) levigate.Match {
	var buf [96]byte
	key := fold.Append(buf[:0], name)
	if m := findOwn(key, own); m != nil {
		return levigate.Match{Material: m}
	}
	if m := l.workspace[string(key)]; m != nil {
		return levigate.Match{Material: m}
	}
	if match, ok := embedded().find[string(key)]; ok {
		return match
	}
	return levigate.Match{Nearest: l.nearest(string(key), own)}
}

// findOwn tries every code before any name.
func findOwn(key []byte, own []*levigate.Material) *levigate.Material {
	if len(key) == 0 {
		return nil
	}
	var buf [96]byte
	for _, m := range own {
		if string(fold.Append(buf[:0], m.Code)) == string(key) {
			return m
		}
	}
	for _, m := range own {
		if string(fold.Append(buf[:0], m.Name)) == string(key) {
			return m
		}
	}
	return nil
}

// Substance finds a substance by its INCI name, US name or another alias.
func (l *Library) Substance(inci string) (*levigate.Substance, bool) {
	var buf [96]byte
	s, ok := embedded().substances[string(fold.Append(buf[:0], inci))]
	return s, ok
}

// Isotherm finds what a raw material may be like.
func (l *Library) Isotherm(name string) (*levigate.Isotherm, bool) {
	if row, ok := refdata.Isotherm(strings.ToLower(name)); ok {
		return row, true
	}
	if s, ok := l.Substance(name); ok && s.Isotherm != nil {
		return s.Isotherm, true
	}
	m := l.Find(name, nil).Material
	switch {
	case m == nil:
		return nil, false
	case m.Isotherm != nil:
		return m.Isotherm, true
	}
	if dry := m.DryShares(); len(dry) == 1 && dry[0].Substance != nil && dry[0].Substance.Isotherm != nil {
		return dry[0].Substance.Isotherm, true
	}
	return nil, false
}

// index is the embedded shelf, made once.
type index struct {
	find       map[string]levigate.Match
	substances map[string]*levigate.Substance
	names      []name
}

var embedded = sync.OnceValue(func() *index {
	x := &index{find: map[string]levigate.Match{}, substances: map[string]*levigate.Substance{}}
	put := func(name string, m levigate.Match) {
		if key := fold.String(name); x.find[key].Material == nil {
			x.find[key] = m
			x.names = append(x.names, named(name, m.Material))
		}
	}
	for _, m := range refdata.Materials() {
		if key := fold.String(m.Code); x.find[key].Material == nil {
			x.find[key] = levigate.Match{Material: m} // nobody misspells a code into a suggestion
		}
	}
	entries := refdata.Entries()
	meant := make([]levigate.Match, len(entries))
	for i, e := range entries {
		meant[i] = means(e)
		put(e.INCI, meant[i])
		x.substances[fold.String(e.INCI)] = e.Substance
	}
	for _, m := range refdata.Materials() {
		put(m.Name, levigate.Match{Material: m})
	}
	// Aliases come last: where a US label name is also the plain name of a raw
	// material ("Rice starch"), a maker means what she buys.
	for i, e := range entries {
		for _, a := range e.Aliases {
			put(a, meant[i])
			if key := fold.String(a); x.substances[key] == nil {
				x.substances[key] = e.Substance
			}
		}
	}
	return x
})

// means is what an INCI name by itself stands for: a mixture's typical raw
// material, or the substance dry and pure, with a pointer to how it is bought
// when that holds water.
func means(e refdata.Entry) levigate.Match {
	if e.Alone != "" {
		if m, ok := refdata.Material(e.Alone); ok {
			return levigate.Match{Material: m}
		}
	}
	match := levigate.Match{Material: pure(e.Substance)}
	if m, ok := refdata.Material(e.Delivered); ok {
		match.Delivered = m
	}
	return match
}
