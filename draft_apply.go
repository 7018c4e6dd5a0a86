package levigate

import (
	"fmt"
	"maps"
	"slices"
)

// Bounds of what a document may hold: a person never meets them, a program that
// runs wild does.
const (
	MostRows     = 500
	MostCell     = 20_000 // bytes in one cell
	MostChanges  = 2_000  // in one command
	LongestRowID = 64
)

// Apply makes the changes of a command, all of them or none. It returns the
// changes that undo them, in the order they have to be made, and completes the
// command's own where they left something to be found: where a removed row
// stood and what was in it. Clashes are cells that no longer hold what the
// sender saw; the document is then as it was.
func (d *Document) Apply(c *Command) (inverse []Change, clashes []Clash, err error) {
	if len(c.Changes) == 0 || len(c.Changes) > MostChanges {
		return nil, nil, refused("a command makes 1 to %d changes, not %d", MostChanges, len(c.Changes))
	}
	next := d.clone()
	changes := slices.Clone(c.Changes)
	for i := range changes {
		ch := &changes[i]
		undo, clash, err := next.change(ch)
		switch {
		case err != nil:
			return nil, nil, err
		case clash != nil:
			clashes = append(clashes, *clash)
		case undo != nil:
			inverse = append(inverse, *undo)
		}
	}
	if len(clashes) > 0 {
		return nil, clashes, nil
	}
	slices.Reverse(inverse)
	*d, c.Changes = next, changes
	return inverse, nil, nil
}

func (d *Document) change(ch *Change) (undo *Change, clash *Clash, err error) {
	if len(ch.To) > MostCell {
		return nil, nil, refused("a cell holds at most %d bytes", MostCell)
	}
	if !ch.text() {
		return nil, nil, refused("a change holds bytes that are no text")
	}
	if ch.List == "head" {
		return d.setHead(ch)
	}
	rows, fields, err := d.rows(ch.List)
	if err != nil {
		return nil, nil, err
	}
	if ch.Row == "" || len(ch.Row) > LongestRowID {
		return nil, nil, refused("a row's id has 1 to %d bytes", LongestRowID)
	}
	at := slices.IndexFunc(*rows, func(r Row) bool { return r.ID == ch.Row })
	gone := &Clash{List: ch.List, Row: ch.Row, Field: ch.Field, Seen: ch.From, Mine: ch.To, Gone: true}
	switch ch.Do {
	case Set:
		switch {
		case !slices.Contains(fields, ch.Field):
			return nil, nil, refused("%s have no field %q", ch.List, ch.Field)
		case at < 0:
			return nil, gone, nil
		}
		return setCell((*rows)[at].Cells, ch)
	case Insert:
		if at >= 0 {
			return nil, nil, refused("row %q is there already", ch.Row)
		}
		if len(*rows) >= MostRows {
			return nil, nil, refused("a formula has at most %d %s", MostRows, ch.List)
		}
		cells := map[string]string{}
		for f, v := range ch.Cells {
			if !slices.Contains(fields, f) || len(v) > MostCell {
				return nil, nil, refused("%s have no field %q, or it holds too much", ch.List, f)
			}
			cells[f] = v
		}
		place(rows, Row{ch.Row, cells}, ch.After)
		return &Change{Do: Remove, List: ch.List, Row: ch.Row}, nil, nil
	case Remove:
		if at < 0 {
			return nil, nil, nil // gone already, which is what was wanted
		}
		ch.Cells, ch.After = (*rows)[at].Cells, before(*rows, at)
		*rows = slices.Delete(*rows, at, at+1)
		return &Change{Do: Insert, List: ch.List, Row: ch.Row, After: ch.After, Cells: maps.Clone(ch.Cells)}, nil, nil
	case Move:
		if at < 0 {
			return nil, gone, nil
		}
		was, row := before(*rows, at), (*rows)[at]
		*rows = slices.Delete(*rows, at, at+1)
		place(rows, row, ch.After)
		return &Change{Do: Move, List: ch.List, Row: ch.Row, After: was}, nil, nil
	}
	return nil, nil, refused("%q is nothing a change can do", ch.Do)
}

func (d *Document) setHead(ch *Change) (*Change, *Clash, error) {
	if ch.Do != Set || !slices.Contains(Heads, ch.Field) {
		return nil, nil, refused("the head has no field %q that can be %s", ch.Field, ch.Do)
	}
	if d.Head == nil {
		d.Head = map[string]string{}
	}
	return setCell(d.Head, ch)
}

// setCell writes a cell that still holds what its sender saw. One that holds
// what she wants already has been written, by her or by someone of her mind.
func setCell(cells map[string]string, ch *Change) (*Change, *Clash, error) {
	now := cells[ch.Field]
	if now == ch.To {
		return nil, nil, nil
	}
	if now != ch.From {
		return nil, &Clash{List: ch.List, Row: ch.Row, Field: ch.Field, Seen: ch.From, Now: now, Mine: ch.To}, nil
	}
	if ch.To == "" {
		delete(cells, ch.Field)
	} else {
		cells[ch.Field] = ch.To
	}
	return &Change{Do: Set, List: ch.List, Row: ch.Row, Field: ch.Field, From: ch.To, To: now}, nil, nil
}

func (d *Document) rows(name string) (*[]Row, []string, error) {
	switch name {
	case "lines":
		return &d.Lines, LineCells, nil
	case "making":
		return &d.Making, StepCells, nil
	}
	return nil, nil, refused("a document has no list %q; there are head, lines and making", name)
}

// place puts a row behind another; at the top for an empty id, last where that
// row has gone.
func place(rows *[]Row, r Row, after string) {
	at := 0
	if after != "" {
		at = slices.IndexFunc(*rows, func(x Row) bool { return x.ID == after }) + 1
		if at == 0 {
			at = len(*rows)
		}
	}
	*rows = slices.Insert(*rows, at, r)
}

func before(rows []Row, at int) string {
	if at == 0 {
		return ""
	}
	return rows[at-1].ID
}

func (d *Document) clone() Document {
	out := Document{Head: maps.Clone(d.Head), Lines: slices.Clone(d.Lines), Making: slices.Clone(d.Making), Own: d.Own}
	for _, rows := range [][]Row{out.Lines, out.Making} {
		for i := range rows {
			rows[i].Cells = maps.Clone(rows[i].Cells)
			if rows[i].Cells == nil {
				rows[i].Cells = map[string]string{}
			}
		}
	}
	return out
}

func refused(format string, args ...any) error {
	return &Error{Code: Invalid, Message: fmt.Sprintf(format, args...), Help: "the page sent an edit this version cannot make; reload it"}
}
