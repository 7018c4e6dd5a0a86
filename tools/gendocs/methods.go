package main

import (
	"fmt"
	"strings"

	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// methodsPage prints every declared method: text, symbols with their ranges,
// accuracy, sources, and how many checks stand behind it.
func methodsPage() string {
	s := newSheet("Methods")
	s.paragraph("An equation's text is compared with its code at a thousand points, so the printed one is the one that runs. " +
		"A procedure is anything else and is proved by its checks, which are listed in [validation](validation.md). " +
		"A rule of our own says so in its title.")
	for _, t := range topics() {
		s.heading(2, "%s", t.name)
		for _, m := range t.methods {
			method(s, m)
		}
	}
	return s.String()
}

func method(s *sheet, m *work.Method) {
	s.heading(3, "%s", m.ID)
	s.paragraph("**%s.** Gives %s.", inline(m.Title), unit(m.Unit))
	if m.Kind == work.Equation {
		s.mono([]string{m.Text})
	} else {
		s.paragraph("%s", inline(m.Text))
	}
	var rows [][]string
	for _, y := range m.Symbols {
		rows = append(rows, []string{y.Name, y.Means, unit(y.Unit), trimmed(quantity.Significant(y.Min, 4)), trimmed(quantity.Significant(y.Max, 4))})
	}
	s.table([]string{"Symbol", "Means", "Unit", "From", "To"}, rows)
	s.paragraph("Accuracy: %s.", strings.TrimSuffix(inline(m.Accuracy), "."))
	if len(m.Sources) > 0 {
		s.paragraph("Sources: %s.", strings.TrimSuffix(inline(sources(m.Sources)), "."))
	}
	s.paragraph("Checks: %s.", tally(m.Checks))
}

// unit is a unit in words where it would look like a number.
func unit(u quantity.Unit) string {
	if u == quantity.One {
		return "a plain number"
	}
	return string(u)
}

func sources(refs []cite.Ref) string {
	var out []string
	seen := map[cite.Ref]bool{}
	for _, r := range refs {
		if !seen[r] {
			seen[r] = true
			out = append(out, r.String())
		}
	}
	return strings.Join(out, "; ")
}

// vouches is the order the vouches are told in, strongest first.
var vouches = []work.Vouch{work.Published, work.Independent, work.Law, work.CommonPractice, work.FromMemory, work.Pinned}

// tally counts checks by who vouches for them.
func tally(checks []work.Check) string {
	count := map[work.Vouch]int{}
	for _, c := range checks {
		count[c.By]++
	}
	var out []string
	for _, v := range vouches {
		if n := count[v]; n > 0 {
			out = append(out, fmt.Sprintf("%d %s", n, v))
		}
	}
	if len(out) == 0 {
		return "none"
	}
	return strings.Join(out, ", ")
}

// topic is the methods whose names begin alike.
type topic struct {
	name    string
	methods []*work.Method
}

func topics() []topic {
	var out []topic
	for _, m := range work.Methods() {
		name, _, _ := strings.Cut(m.ID, ".")
		name = strings.ToUpper(name[:1]) + name[1:]
		if len(out) == 0 || out[len(out)-1].name != name {
			out = append(out, topic{name: name})
		}
		last := &out[len(out)-1]
		last.methods = append(last.methods, m)
	}
	return out
}
