package program

import (
	"levigate/cite"
	"levigate/refdata"
	"levigate/work"
)

// explainTable prints a table's card and its rows as they are kept.
func explainTable(name string) Explanation {
	x := Explanation{Kind: "table", ID: name, Title: name}
	t, err := refdata.Open(name)
	if err != nil {
		x.Sections = []Section{{Text: err.Error()}}
		return x
	}
	c := t.Card
	x.Title = c.Title
	for _, s := range []Section{
		{Text: c.Notes}, {Head: "Units", Text: c.Units}, {Head: "How it came in", Text: c.Mark.String() + "; " + c.Keyed},
		{Head: "Licence", Text: c.Licence},
	} {
		if s.Text != "" {
			x.Sections = append(x.Sections, s)
		}
	}
	rows := &work.Table{Head: t.Head}
	for _, r := range t.Rows {
		cells := make([]string, len(t.Head))
		for i, h := range t.Head {
			cells[i] = r.Text(h)
		}
		rows.Rows = append(rows.Rows, cells)
	}
	x.Sections = append(x.Sections, Section{Head: "Rows", Table: rows})
	return sourced(x, []cite.Ref{{Key: c.Source, At: c.At}})
}
