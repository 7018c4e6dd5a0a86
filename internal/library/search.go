package library

import (
	"cmp"
	"slices"
	"strings"

	"levigate"
	"levigate/internal/fold"
	"levigate/refdata"
)

// Index finds raw materials by part of a name, as one types. It is made once
// and safe for use by many at once.
type Index struct{ entries []entry }

// entry is one raw material with every name it goes by, folded, each between
// two line ends.
type entry struct {
	material *levigate.Material
	keys     string
	first    int // where the names of its substances begin
	label    string
	// common is in how many raw materials its substance is found: of two that
	// begin alike the everyday one is meant. A blend has none.
	common int
}

// NewIndex makes an index of raw materials. Those of the workspace come first,
// and with embedded ones the shelf follows, then what an INCI name alone means.
func NewIndex(workspace []*levigate.Material, withShelf bool) *Index {
	x := &Index{}
	for _, m := range workspace {
		x.add(m)
	}
	if !withShelf {
		return x
	}
	shelf := embedded()
	for _, m := range refdata.Materials() {
		x.add(m)
	}
	for _, e := range refdata.Entries() {
		// The same one that a line of this name finds.
		if m := shelf.find[fold.String(e.INCI)].Material; m.Origin == levigate.Pure {
			x.add(m)
		}
	}
	x.count()
	return x
}

func (x *Index) add(m *levigate.Material) {
	own := []string{m.Code, m.Name}
	var others []string
	for _, s := range m.Declared {
		others = append(others, s.INCI)
		if s.Substance != nil {
			others = append(others, s.Substance.Aliases...)
		}
	}
	e := entry{material: m, label: fold.String(m.Name)}
	e.keys = "\n" + joined(own)
	e.first = len(e.keys) - 1
	e.keys += joined(others)
	x.entries = append(x.entries, e)
}

// count fills in how common each raw material's substance is.
func (x *Index) count() {
	in := map[string]int{}
	for i := range x.entries {
		for _, s := range x.entries[i].material.Declared {
			in[s.INCI]++
		}
	}
	for i := range x.entries {
		e := &x.entries[i]
		for _, s := range e.material.Declared {
			if s.Percent.Typical >= mainly {
				e.common = in[s.INCI]
			}
		}
	}
}

// mainly is the share from which a raw material is its substance, %.
const mainly = 95

func joined(names []string) string {
	var b strings.Builder
	for _, n := range names {
		if key := fold.String(n); key != "" {
			b.WriteString(key)
			b.WriteByte('\n')
		}
	}
	return b.String()
}

// How well a name answers what was typed, best first: it is it, begins with it,
// has a word that begins with it, has it within, or has all its words.
const (
	isIt = iota
	begins
	beginsBelow // an INCI name or an alias of what it is made of
	wordBegins
	within
	allWords
	nowhere
)

// Search lists the raw materials that a text may mean, best first. An empty
// text lists the first ones by name.
func (x *Index) Search(text string, most int) []*levigate.Material {
	asked := fold.String(text)
	parts := words(asked)
	type found struct {
		*entry
		rank int
	}
	var hits []found
	for i := range x.entries {
		e := &x.entries[i]
		if rank := e.rank(asked, parts); rank < nowhere {
			hits = append(hits, found{e, rank})
		}
	}
	slices.SortStableFunc(hits, func(a, b found) int {
		return cmp.Or(cmp.Compare(a.rank, b.rank), cmp.Compare(bare(a.material), bare(b.material)), cmp.Compare(b.common, a.common),
			cmp.Compare(len(a.label), len(b.label)), strings.Compare(a.label, b.label))
	})
	out := make([]*levigate.Material, 0, min(most, len(hits)))
	for _, h := range hits[:min(len(hits), max(most, 0))] {
		out = append(out, h.material)
	}
	return out
}

// bare puts what can be bought before a substance by its bare name.
func bare(m *levigate.Material) int {
	if m.Origin == levigate.Pure {
		return 1
	}
	return 0
}

func (e *entry) rank(asked string, parts []string) int {
	best := nowhere
	for at := 0; asked != "" && best > isIt; {
		i := strings.Index(e.keys[at:], asked)
		if i < 0 {
			break
		}
		i += at
		at = i + 1
		switch before := e.keys[i-1]; {
		case before == '\n' && e.keys[i+len(asked)] == '\n':
			best = isIt
		case before == '\n' && i <= e.first:
			best = min(best, begins)
		case before == '\n':
			best = min(best, beginsBelow)
		case strings.IndexByte(" /()-,%", before) >= 0:
			best = min(best, wordBegins)
		default:
			best = min(best, within)
		}
	}
	switch {
	case asked == "":
		return begins
	case best < nowhere || len(parts) < 2:
		return best
	}
	for _, p := range parts {
		if !strings.Contains(e.keys, p) {
			return nowhere
		}
	}
	return allWords
}
