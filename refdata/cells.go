package refdata

import (
	"fmt"
	"strings"

	"levigate"
	"levigate/cite"
)

// shared is how a field without a mark of its own is known: as its table is.
func (r Row) shared() levigate.Provenance {
	c := &r.table.Card
	return levigate.Provenance{Mark: c.Mark, From: cite.Ref{Key: c.Source}}
}

// word reads a cell of words and keeps its mark. Words are marked as their
// table is, unless the cell ends in a mark and a source of its own, like
// "anionic r eu-annexes".
func (r Row) word(column string, marks levigate.Marks) string {
	text := r.Text(column)
	if text == "" {
		return ""
	}
	from := r.shared()
	if f := strings.Fields(text); len(f) > 2 {
		if own, err := provenance(f[len(f)-2], f[len(f)-1]); err == nil {
			text, from = strings.Join(f[:len(f)-2], " "), own
		}
	}
	marks[column] = from
	return text
}

// stated reads a cell that may say the same thing several times over, where
// sources disagree: "15 r griffin1949; 12 m recalled". The first is used.
func (r Row) stated(column string, marks levigate.Marks) ([]levigate.Stated, error) {
	var out []levigate.Stated
	for _, text := range list(r.Text(column)) {
		v, p, err := r.cell(column, text)
		if err != nil {
			return nil, err
		}
		out = append(out, levigate.Stated{Range: v, Provenance: p})
	}
	if len(out) > 0 {
		marks[column] = out[0].Provenance
	}
	return out, nil
}

// named is one entry of a cell "NAME: CELL; NAME: CELL".
type named struct {
	Name string
	levigate.Stated
}

// names reads such a cell. Each number's mark is kept as "column/NAME".
func (r Row) names(column string, marks levigate.Marks) ([]named, error) {
	var out []named
	for _, text := range list(r.Text(column)) {
		name, value, ok := strings.Cut(text, ": ")
		if !ok {
			return nil, fmt.Errorf("%s: column %s: %q: want NAME: CELL", r.At(), column, text)
		}
		v, p, err := r.cell(column, value)
		if err != nil {
			return nil, err
		}
		if _, twice := marks[column+"/"+name]; twice {
			return nil, fmt.Errorf("%s: column %s: %s stands twice", r.At(), column, name)
		}
		marks[column+"/"+name] = p
		out = append(out, named{name, levigate.Stated{Range: v, Provenance: p}})
	}
	return out, nil
}
