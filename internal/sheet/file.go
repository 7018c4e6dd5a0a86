package sheet

import (
	"fmt"
	"strconv"
	"strings"

	"levigate"
	"levigate/formulafile"
)

// Import reads a formula file into a document.
func Import(name string, data []byte) (*levigate.Document, []levigate.Problem) {
	f, problems := formulafile.Read(name, data)
	if len(problems) > 0 {
		return nil, problems
	}
	return Of(f), nil
}

// Of is the document that says what a formula says. Rows are named by their
// order.
func Of(f *levigate.Formula) *levigate.Document {
	d := &levigate.Document{Head: map[string]string{}, Lines: []levigate.Row{}, Making: []levigate.Row{}, Own: ownText(f.Materials)}
	put(d.Head, "code", f.Code, "name", f.Name, "product", f.Product, "markets", strings.Join(f.Markets, ", "),
		"claims", strings.Join(f.Claims, ", "), "area", strings.Join(f.Use.Area, ", "), "eye", yes(f.Use.Eye), "spray", yes(f.Use.Spray),
		"under-3", yes(f.Use.Under3), "pack", f.Pack, "notes", f.Notes)
	if !f.Batch.IsZero() {
		d.Head["batch"] = f.Batch.String() + " g"
	}
	for i := range f.Lines {
		l := &f.Lines[i]
		percent := l.Percent.Fixed(2)
		if l.QS {
			percent = "qs"
		}
		row := levigate.Row{ID: "line-" + strconv.Itoa(i+1), Cells: map[string]string{}}
		put(row.Cells, "phase", l.Phase, "material", l.Name, "percent", percent, "sits", string(l.Sits))
		d.Lines = append(d.Lines, row)
	}
	for i := range f.Making {
		s := &f.Making[i]
		row := levigate.Row{ID: "step-" + strconv.Itoa(i+1), Cells: map[string]string{}}
		put(row.Cells, "step", s.Number, "phase", s.Phase, "text", s.Text)
		if s.HasTemp {
			row.Cells["temperature"] = number(s.Temperature) + " °C"
		}
		if s.Minutes != 0 {
			row.Cells["minutes"] = number(s.Minutes)
		}
		d.Making = append(d.Making, row)
	}
	return d
}

// File writes a document as a formula file. A document that cannot be read
// whole makes no file: half a formula must not be mistaken for one.
func File(d *levigate.Document) ([]byte, error) {
	s := Read(d)
	var wrong []string
	for _, p := range s.Problems {
		wrong = append(wrong, p.Text)
	}
	if s.Formula.Code == "" {
		wrong = append(wrong, "the formula has no code")
	}
	if s.Formula.Name == "" {
		wrong = append(wrong, "the formula has no name")
	}
	if len(wrong) > 0 {
		return nil, unwritten(wrong)
	}
	data := formulafile.Write(s.Formula)
	// A file that does not read back is none.
	if _, problems := formulafile.Read("", data); len(problems) > 0 {
		return nil, unwritten([]string{problems[0].Text})
	}
	return data, nil
}

func unwritten(wrong []string) error {
	help := "settle that first; the draft itself is kept"
	if n := len(wrong); n > 1 {
		help = fmt.Sprintf("settle that and %d more first; the draft itself is kept", n-1)
	}
	return &levigate.Error{Code: levigate.Invalid, Message: "no file can be written of this formula yet: " + wrong[0], Help: help}
}

// put sets the cells that hold something: field, value, field, value.
func put(cells map[string]string, pairs ...string) {
	for i := 0; i+1 < len(pairs); i += 2 {
		if pairs[i+1] != "" {
			cells[pairs[i]] = pairs[i+1]
		}
	}
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return ""
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
