package sqlite

import (
	"fmt"
	"testing"

	"levigate"
)

// forty is a formula of forty lines, as typed.
func forty() levigate.Document {
	d := levigate.Document{Head: map[string]string{"code": "HP-03", "name": "Walnut hand polish", "product": "hand-wash"}}
	for i := range 40 {
		d.Lines = append(d.Lines, levigate.Row{ID: fmt.Sprintf("01JC%04d-7f3a", i), Cells: map[string]string{
			"phase": "ABC"[i%3 : i%3+1], "material": fmt.Sprintf("Raw material number %d", i), "percent": "2.5", "function": "filler", "note": "sieved"}})
	}
	return d
}

// BenchmarkApply is one keystroke kept: on the disk for good when it ends.
func BenchmarkApply(b *testing.B) {
	s := opened(b, b.TempDir())
	if err := s.CreateDraft(b.Context(), &levigate.Draft{ID: "d", Document: forty()}); err != nil {
		b.Fatal(err)
	}
	from, n := "2.5", 0
	for b.Loop() {
		n++
		to := fmt.Sprint(n)
		if _, err := s.Apply(b.Context(), &levigate.Command{ID: fmt.Sprint("c", n), Draft: "d", Base: int64(n - 1), Changes: []levigate.Change{
			{Do: levigate.Set, List: "lines", Row: "01JC0017-7f3a", Field: "percent", From: from, To: to}}}); err != nil {
			b.Fatal(err)
		}
		from = to
	}
}

func BenchmarkDraft(b *testing.B) {
	s := opened(b, b.TempDir())
	if err := s.CreateDraft(b.Context(), &levigate.Draft{ID: "d", Document: forty()}); err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := s.Draft(b.Context(), "d"); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkList lists fifty of ten thousand formulas of forty lines each.
func BenchmarkList(b *testing.B) {
	s := opened(b, b.TempDir())
	if _, err := s.writer.Exec(`PRAGMA synchronous = OFF`); err != nil {
		b.Fatal(err)
	}
	d := forty()
	for i := range 10_000 {
		d.Head["code"], d.Head["name"] = fmt.Sprintf("HP-%05d", i), fmt.Sprintf("Walnüsse hand polish of trial %d", i)
		if err := s.CreateDraft(b.Context(), &levigate.Draft{ID: fmt.Sprint("d", i), Document: d}); err != nil {
			b.Fatal(err)
		}
	}
	for _, c := range []struct {
		name, text string
		want       int
	}{{"all", "", 50}, {"many", "walnusse", 50}, {"one", "hp-09999", 1}, {"none", "sesame", 0}} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				if found, err := s.ListDrafts(b.Context(), c.text, 50); err != nil || len(found) != c.want {
					b.Fatal(len(found), err)
				}
			}
		})
	}
}

// BenchmarkOpen is the start on a workspace that is there, and on none.
func BenchmarkOpen(b *testing.B) {
	dir := b.TempDir()
	s := opened(b, dir)
	fill(b, s)
	s.Close()
	open := func(b *testing.B, dir string) {
		s, err := Open(dir)
		if err != nil {
			b.Fatal(err)
		}
		if _, err := s.ListDrafts(b.Context(), "", 50); err != nil {
			b.Fatal(err)
		}
		s.Close()
	}
	b.Run("there", func(b *testing.B) {
		for b.Loop() {
			open(b, dir)
		}
	})
	b.Run("new", func(b *testing.B) {
		n := 0
		for b.Loop() {
			n++
			open(b, fmt.Sprint(dir, "/", n))
		}
	})
}

// BenchmarkVerify walks a chain of a thousand records.
func BenchmarkVerify(b *testing.B) {
	s := opened(b, b.TempDir())
	if _, err := s.writer.Exec(`PRAGMA synchronous = OFF`); err != nil {
		b.Fatal(err)
	}
	for i := range 1000 {
		if err := s.AddRecord(b.Context(), &levigate.Record{ID: fmt.Sprint("r", i), Kind: "reading", Body: []byte(`{"property":"water","value":13.2}`)}); err != nil {
			b.Fatal(err)
		}
	}
	for b.Loop() {
		if faults, err := s.Verify(b.Context()); err != nil || len(faults) > 0 {
			b.Fatal(faults, err)
		}
	}
}
