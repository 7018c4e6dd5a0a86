package program

import (
	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
	"levigate/work/render"
)

// explainMethod prints a declaration: what it says, its symbols with their
// ranges, how good it is, who vouches for it.
func explainMethod(m *work.Method) Explanation {
	x := Explanation{Kind: "method", ID: m.ID, Title: m.Title}
	x.Sections = append(x.Sections, Section{Text: m.Text})
	if len(m.Symbols) > 0 {
		x.Sections = append(x.Sections, Section{Head: "Symbols", Table: Symbols(m)})
	}
	unit := string(m.Unit)
	if m.Unit == quantity.One {
		unit = "a plain number"
	}
	x.Sections = append(x.Sections, Section{Head: "Gives", Text: unit}, Section{Head: "How good it is", Text: m.Accuracy})
	if len(m.Checks) > 0 {
		x.Sections = append(x.Sections, Section{Head: "Checked against", Table: checks(m)})
	}
	return sourced(x, m.Sources)
}

// Symbols lists a method's inputs with the range each is stated for.
func Symbols(m *work.Method) *work.Table {
	t := &work.Table{Head: []string{"key", "what it is", "unit", "from", "to", "if left out"}}
	for _, s := range m.Symbols {
		left := "needed"
		if d, ok := Default(s); ok {
			left = render.Plain(d)
		}
		t.Rows = append(t.Rows, []string{s.Name, s.Means, string(s.Unit), render.Plain(s.Min), render.Plain(s.Max), left})
	}
	return t
}

func checks(m *work.Method) *work.Table {
	t := &work.Table{Head: []string{"what", "expected", "within", "vouched for by"}}
	for _, c := range m.Checks {
		by := c.By.String()
		if c.From.Key != "" {
			by += ": " + c.From.String()
		}
		t.Rows = append(t.Rows, []string{c.What, quantity.Significant(c.Want, 5), quantity.Significant(c.Tol, 2), by})
	}
	return t
}

// sourced adds the sources, each once.
func sourced(x Explanation, refs []cite.Ref) Explanation {
	var items []string
	seen := map[cite.Ref]bool{}
	for _, r := range refs {
		if !seen[r] {
			seen[r] = true
			items = append(items, r.String())
		}
	}
	if len(items) > 0 {
		x.Sections = append(x.Sections, Section{Head: "Sources", Items: items})
	}
	return x
}
