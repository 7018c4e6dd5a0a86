package levigate

import (
	"slices"
	"unicode/utf8"
)

// Valid reports whether a document is one that commands could have made: known
// fields, rows with ids of their own, nothing beyond the bounds.
func (d *Document) Valid() error {
	if err := cellsValid("the head", d.Head, Heads); err != nil {
		return err
	}
	if len(d.Own) > MostRows*MostCell || !utf8.ValidString(d.Own) {
		return refused("the raw materials of the formula's own are too much, or no text")
	}
	for _, list := range []struct {
		name   string
		rows   []Row
		fields []string
	}{{"lines", d.Lines, LineCells}, {"making", d.Making, StepCells}} {
		if len(list.rows) > MostRows {
			return refused("a formula has at most %d %s, not %d", MostRows, list.name, len(list.rows))
		}
		seen := map[string]bool{}
		for _, r := range list.rows {
			switch {
			case r.ID == "" || len(r.ID) > LongestRowID || !utf8.ValidString(r.ID):
				return refused("a row's id has 1 to %d bytes of text", LongestRowID)
			case seen[r.ID]:
				return refused("%s have two rows %q", list.name, r.ID)
			}
			seen[r.ID] = true
			if err := cellsValid(list.name, r.Cells, list.fields); err != nil {
				return err
			}
		}
	}
	return nil
}

func cellsValid(where string, cells map[string]string, fields []string) error {
	for f, v := range cells {
		switch {
		case !slices.Contains(fields, f):
			return refused("%s can't have a field %q", where, f)
		case len(v) > MostCell:
			return refused("a cell holds at most %d bytes; %s of %s has %d", MostCell, f, where, len(v))
		case !utf8.ValidString(v):
			return refused("%s of %s is no text", f, where)
		}
	}
	return nil
}

// text reports whether everything a change would write is text: what is kept as
// JSON comes back as it went in only then.
func (ch *Change) text() bool {
	for f, v := range ch.Cells {
		if !utf8.ValidString(f) || !utf8.ValidString(v) {
			return false
		}
	}
	return utf8.ValidString(ch.Row) && utf8.ValidString(ch.From) && utf8.ValidString(ch.To) && utf8.ValidString(ch.After)
}
