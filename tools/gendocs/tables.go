package main

import (
	"fmt"
	"strings"

	"levigate/cite"
	"levigate/refdata"
)

// tablesPage prints the card of every embedded table.
func tablesPage() string {
	s := newSheet("Tables")
	s.paragraph("The reference data that is built in. Read means that the figures were seen in the source named; " +
		"from memory means that they were recalled and may warn but never stop; common practice is a habit of the trade. " +
		"Where rows differ, each row carries its own mark and source.")
	folder := ""
	for _, name := range refdata.Names() {
		t, err := refdata.Open(name)
		if err != nil {
			panic("gendocs: " + err.Error())
		}
		if f, _, _ := strings.Cut(name, "/"); f != folder {
			folder = f
			s.heading(2, "%s", strings.ToUpper(f[:1])+f[1:])
		}
		c := t.Card
		s.heading(3, "%s", name)
		s.paragraph("**%s.** %d rows, %s.", inline(c.Title), len(t.Rows), c.Mark)
		lines := []string{
			"Source: " + cite.Ref{Key: c.Source, At: c.At}.String(),
			"Units: " + c.Units,
			"Keyed: " + c.Keyed,
			"Licence: " + c.Licence,
			fmt.Sprintf("Columns: %s", strings.Join(t.Head, ", ")),
		}
		if c.Notes != "" {
			lines = append(lines, "Notes: "+c.Notes)
		}
		s.list(lines)
	}
	return s.String()
}
