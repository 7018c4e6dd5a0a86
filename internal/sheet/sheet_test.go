package sheet

import (
	"io/fs"
	"maps"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"levigate"
	"levigate/examples"
	"levigate/formulafile"
	"levigate/internal/assess"
	"levigate/internal/library"
)

var shelf = library.New(nil)

func check(s *Sheet) *levigate.Assessment {
	s.Resolve(shelf)
	return assess.Check(assess.Request{Formula: s.Formula, Library: shelf, Conditions: levigate.Conditions{Temperature: levigate.Room}, Unread: s.Names()})
}

// Every demo formula says the same as a document, and as a file made of it.
func TestExamplesComeThrough(t *testing.T) {
	names, err := fs.Glob(examples.Files, "*.formula.yaml")
	if err != nil || len(names) < 10 {
		t.Fatal(names, err)
	}
	for _, name := range names {
		data, err := fs.ReadFile(examples.Files, name)
		if err != nil {
			t.Fatal(err)
		}
		f, problems := formulafile.Read(name, data)
		if problems = append(problems, f.Resolve(shelf)...); len(problems) > 0 {
			t.Fatal(name, problems)
		}
		want := assess.Check(assess.Request{Formula: f, Library: shelf, Conditions: levigate.Conditions{Temperature: levigate.Room}})
		d, _ := Import(name, data)
		file, err := File(d)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		again, problems := Import(name, file)
		if len(problems) > 0 {
			t.Errorf("%s: written again: %v", name, problems)
			continue
		}
		for way, doc := range map[string]*levigate.Document{"document": d, "written again": again} {
			s := Read(doc)
			got := check(s)
			if len(s.Problems) > 0 {
				t.Errorf("%s, %s: %v", name, way, s.Problems)
			}
			if len(got.Figures) != len(want.Figures) || len(got.Findings) != len(want.Findings) {
				t.Errorf("%s, %s: %d figures and %d findings, want %d and %d", name, way, len(got.Figures), len(got.Findings), len(want.Figures), len(want.Findings))
				continue
			}
			for i := range want.Figures {
				if g, w := got.Figures[i], want.Figures[i]; g.Value != w.Value || g.Low != w.Low || g.High != w.High || g.State != w.State {
					t.Errorf("%s, %s: %s is %g, want %g", name, way, w.ID, g.Value, w.Value)
				}
			}
		}
	}
}

func TestPercent(t *testing.T) {
	for text, want := range map[string]string{
		"12.5": "12.5", "12,5": "12.5", " 12.5 % ": "12.5", "12,5%": "12.5", "0": "0", "100": "100", "0.000001": "0.000001",
		"qs": "qs", "QS": "qs", "q.s.": "qs", "Q. S.": "qs", "12.5\u00a0%": "12.5", "\u200b7": "7",
	} {
		p, qs, fault, _ := Percent(text)
		got := p.String()
		if qs {
			got = "qs"
		}
		if fault != "" || got != want {
			t.Errorf("%q: %s, %s; want %s", text, got, fault, want)
		}
	}
	for _, text := range []string{"", " ", "%", "1,2,3", "1.2.3", "1.000,5", "-1", "−1", "+1", "1e2", "0x1", "12 5", "twelve", "1.2345678", "12%%", "9999999999999", "NaN", "qs 5"} {
		if _, _, fault, help := Percent(text); fault == "" || help == "" {
			t.Errorf("%q was read, or without help", text)
		}
	}
}

func row(id string, cells ...string) levigate.Row {
	r := levigate.Row{ID: id, Cells: map[string]string{}}
	put(r.Cells, cells...)
	return r
}

// What cannot be read is named by cell; the rest is calculated as far as it may.
func TestWhatCannotBeReadIsNamed(t *testing.T) {
	d := &levigate.Document{
		Head: map[string]string{"product": "hand wash", "batch": "500", "claims": "low water, Ä", "eye": "perhaps", "temperature": "warm"},
		Lines: []levigate.Row{
			row("a", "material", "Glycerin", "percent", "26,5 %"), row("b"), row("c", "phase", "B"),
			row("d", "material", "Kaolinn", "percent", "3"), row("e", "material", "Aqua", "percent", "1o"),
			row("f", "percent", "2"), row("g", "material", "Sunflower oil", "percent", "q.s."), row("h", "material", "Honey", "percent", "qs"),
		},
		Making: []levigate.Row{row("s", "temperature", "60 °C"), row("u")},
		Own:    "- name: Oat\n  colour: grey\n",
	}
	s := Read(d)
	a := check(s)
	got := []string{}
	for _, p := range s.Problems {
		got = append(got, p.List+"/"+p.Row+"/"+p.Field)
		if p.Text == "" || p.Help == "" {
			t.Errorf("%+v says too little", p)
		}
	}
	for _, want := range []string{"head//batch", "head//claims", "head//eye", "head//temperature", "head//own",
		"lines/d/material", "lines/e/percent", "lines/f/material", "lines/h/percent", "making/s/text"} {
		if !slices.Contains(got, want) {
			t.Errorf("%s is not named in %v", want, got)
		}
	}
	if !slices.Equal(s.Rows, []string{"a", "d", "f", "g"}) || s.Formula.Product != "hand-wash" || s.Formula.Total().String() != "100" {
		t.Errorf("%v %s %s", s.Rows, s.Formula.Product, s.Formula.Total())
	}
	f := a.Figures.Get("water.activity")
	if f.State.String() != "missing" || !strings.Contains(strings.Join(f.Notes, " "), "Aqua") || !strings.Contains(strings.Join(f.Notes, " "), "Kaolinn") {
		t.Errorf("activity is %s: %v", f.State, f.Notes)
	}
	if _, err := File(d); levigate.CodeOf(err) != levigate.Invalid {
		t.Errorf("half a formula was written: %v", err)
	}
}

// No line of a formula's own raw materials can begin another key of the file.
func TestOwnStaysInItsPlace(t *testing.T) {
	s := Read(&levigate.Document{Head: map[string]string{"product": "bath"}, Own: "- name: A\n  composition: [{inci: Kaolin, percent: 100}]\ncode: Z\nmaking: []"})
	if s.Formula.Code != "" || len(s.Formula.Materials) > 0 || len(s.Problems) == 0 {
		t.Errorf("%+v, %v", s.Formula, s.Problems)
	}
	own := "- name: Oat flour, ours\n  composition:\n  - {inci: Avena Sativa Kernel Flour, percent: 100}\n  water: {percent: 12, low: 10, high: 14}"
	s = Read(&levigate.Document{Head: map[string]string{"product": "bath"}, Own: own, Lines: []levigate.Row{row("a", "material", "oat flour, OURS", "percent", "100")}})
	s.Resolve(shelf)
	if len(s.Problems) > 0 || s.Formula.Lines[0].Match.Material == nil {
		t.Error(s.Problems)
	}
}

var words = []string{"", "qs", "q.s.", "12.5", "12,5", "0", "1e3", "-4", "99999999", "Glycerin", "Aqua", "Kaolin, fine white", "Sodium Chloride",
	"Sunflower oil, high-oleic, refined", "nothing known", "A", "bath", "lip", "toothpaste", "500 g", "5 kg", "x", "yes", "oil", "grain",
	"low-water", "eu, us", "60 °C", "\x00", "é\u202e", "- name: Q\n  composition: [{inci: Aqua, percent: 100}]"}

func cells(t *rapid.T, fields []string) map[string]string {
	out := map[string]string{}
	for _, f := range fields {
		if rapid.Bool().Draw(t, "has") {
			out[f] = rapid.OneOf(rapid.SampledFrom(words), rapid.String()).Draw(t, f)
		}
	}
	return out
}

// Whatever is typed is read, checked, and either written as a file or refused.
func TestAnyDocumentIsRead(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := &levigate.Document{Head: cells(t, levigate.Heads), Own: rapid.SampledFrom(words).Draw(t, "own")}
		for i := range rapid.IntRange(0, 8).Draw(t, "lines") {
			d.Lines = append(d.Lines, levigate.Row{ID: string(rune('a' + i)), Cells: cells(t, levigate.LineCells)})
		}
		for i := range rapid.IntRange(0, 3).Draw(t, "steps") {
			d.Making = append(d.Making, levigate.Row{ID: string(rune('a' + i)), Cells: cells(t, levigate.StepCells)})
		}
		before := maps.Clone(d.Head)
		s := Read(d)
		if a := check(s); a == nil || len(s.Rows) != len(s.Formula.Lines) {
			t.Fatalf("%d rows, %d lines", len(s.Rows), len(s.Formula.Lines))
		}
		if !maps.Equal(before, d.Head) {
			t.Fatal("reading changed what was typed")
		}
		for _, p := range s.Problems {
			if p.Text == "" || p.Help == "" {
				t.Fatalf("%+v says too little", p)
			}
		}
		file, err := File(d)
		if err != nil {
			return
		}
		back, problems := Import("", file)
		if len(problems) > 0 {
			t.Fatalf("%v\n%s", problems, file)
		}
		// Read names lines by where they stand, and empty ones are not written.
		if x, y := formulafile.Write(Read(back).Formula), formulafile.Write(Read(d).Formula); string(x) != string(y) {
			t.Fatalf("\n%s\nis not\n%s", x, y)
		}
	})
}

func FuzzPercent(f *testing.F) {
	for _, w := range append(words, "12.5 %", "1,2,3", "0.0000001", "12\u2009%") {
		f.Add(w)
	}
	f.Fuzz(func(t *testing.T, text string) {
		p, qs, fault, help := Percent(text)
		switch {
		case p.Negative():
			t.Errorf("%q is %s", text, p)
		case fault != "" && (help == "" || qs || !p.IsZero()):
			t.Errorf("%q: %s, %q, %t, %s", text, fault, help, qs, p)
		case fault == "" && !qs:
			// What is read and written again is the same number.
			if again, _, _, _ := Percent(p.String()); again.Cmp(p) != 0 {
				t.Errorf("%q is %s, then %s", text, p, again)
			}
		}
	})
}
