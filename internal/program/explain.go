package program

import (
	"slices"
	"strings"

	"levigate"
	"levigate/internal/assess"
	"levigate/refdata"
	"levigate/rules"
	"levigate/work"
)

// Explanation is what a figure, method, rule or table is: a title and sections
// in the order they are read.
type Explanation struct {
	Kind, ID, Title string
	Sections        []Section
}

// Section is one of prose, a list or a table under a heading.
type Section struct {
	Head  string
	Text  string
	Items []string
	Table *work.Table
}

// entry is one name that Explain knows.
type entry struct {
	kind, id string
	explain  func() Explanation
}

// Explain tells what an id stands for. Methods, rules, tables, figures and the
// codes of raw materials share one name space; a figure may carry the name of
// the method that makes it. Anything else is looked up on the shelf.
func (p *Program) Explain(id string) (*Explanation, error) {
	all := p.entries()
	for _, e := range all {
		if strings.EqualFold(e.id, id) {
			x := e.explain()
			return &x, nil
		}
	}
	match := p.Library.Find(id, nil)
	switch m := match.Material; {
	case m != nil && m.Origin == levigate.Pure && len(m.Declared) == 1:
		x := explainSubstance(m.Declared[0].Substance)
		return &x, nil
	case m != nil:
		x := explainMaterial(m)
		return &x, nil
	}
	help := meant(id, ids(all), "levigate explain --list names everything")
	if near := match.Nearest; len(near) > 0 {
		help += "; on the shelf: " + strings.Join(near, "; ")
	}
	return nil, invalid("nothing is known under the name "+quoted(id), help)
}

// Explains lists every name Explain knows, with its kind.
func (p *Program) Explains() [][2]string {
	var out [][2]string
	for _, e := range p.entries() {
		out = append(out, [2]string{e.id, e.kind})
	}
	return out
}

// entries lists the name space: figures first, since a figure explains its
// method along with itself.
func (p *Program) entries() []entry {
	var out []entry
	made := p.specimens()
	for _, part := range assess.Parts() {
		for _, id := range assess.Gives(part) {
			out = append(out, entry{"figure", id, func() Explanation { return explainFigure(id, part, made[id]) }})
		}
	}
	for _, m := range work.Methods() {
		if f := made[m.ID]; f == nil || f.Method != m {
			out = append(out, entry{"method", m.ID, func() Explanation { return explainMethod(m) }})
		}
	}
	for _, r := range rules.All() {
		explain := func() Explanation { return explainRule(r) }
		out = append(out, entry{"rule", r.ID, explain}, entry{"rule", r.Name, explain})
	}
	for _, name := range refdata.Names() {
		explain := func() Explanation { return explainTable(name) }
		out = append(out, entry{"table", name, explain})
		if short := shortName(name); short != "" {
			out = append(out, entry{"table", short, explain})
		}
	}
	for _, m := range refdata.Materials() {
		out = append(out, entry{"raw material", m.Code, func() Explanation { return explainMaterial(m) }})
	}
	return out
}

// shortName is a table's name without its folder, when no other table has it.
func shortName(name string) string {
	last := name[strings.LastIndexByte(name, '/')+1:]
	same := func(n string) bool { return n != name && strings.HasSuffix(n, "/"+last) }
	if slices.ContainsFunc(refdata.Names(), same) {
		return ""
	}
	return last
}

func ids(all []entry) []string {
	var out []string
	for _, e := range all {
		out = append(out, e.id)
	}
	return out
}
