package program

import (
	"bytes"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"levigate"
	"levigate/internal/papers"
	"levigate/rules"
)

func weighed(t *testing.T, code, batch string, balances ...string) (*Program, *Weighed) {
	t.Helper()
	p := New()
	p.Clock = func() time.Time { return time.Date(2026, 11, 25, 14, 2, 0, 0, time.UTC) }
	w, err := p.Weigh(WeighInput{File: File{Name: filepath.Join("..", "..", "examples", code+".formula.yaml")}, Batch: batch, Balances: balances, Tolerance: "2"})
	if err != nil || w.List == nil {
		t.Fatal(err, w)
	}
	return p, w
}

// words is everything the paper says.
func words(w *papers.Weighing) string {
	var b strings.Builder
	say := func(s ...string) { b.WriteString(strings.Join(s, " ") + "\n") }
	say(w.Title, w.About, w.Precise, w.Foot)
	for _, f := range w.Facts {
		say(f.Name, f.Text)
	}
	line := func(l papers.WeighingLine) {
		say(append([]string{l.Number, l.Name, l.Code, l.Percent, l.Grams, l.Balance, l.From, l.To}, l.Remarks...)...)
	}
	for _, p := range w.Phases {
		say(p.Name)
		for _, l := range p.Lines {
			line(l)
		}
		line(p.Sum)
	}
	line(w.Total)
	for _, a := range w.Advice {
		say(a.Title, a.Text)
		for _, l := range a.Steps {
			line(l)
		}
	}
	for _, s := range append(w.Notes, w.Cautions...) {
		say(s)
	}
	return b.String()
}

const bench = "0.01 g,2000 g,s=0.01 g,name=Bench"

// The paper of the walnut polish at 100 g: two lines below the minimum weight,
// each with the three weighings of its pre-mix.
func TestWeighingPaper(t *testing.T) {
	p, l := weighed(t, "HP-01", "100 g", bench)
	w := p.paperOf(l)
	said := words(w)
	for _, want := range []string{
		"Walnut hand polish HP-01 · hand wash · weighing list for 100 g", "formula file HP-01.formula.yaml\n", "printed 2026-11-25",
		"1 Glycerin, vegetable, 99.5 % GLY-99 21.00 21.00 1 20.58 21.42", "6 Mixed tocopherols 70 % in sunflower oil TOC-70 0.30 0.30 1 –  under 1 g below minimum",
		"44.80 g after the pre-mixes for lines 6 and 10", "phase B  66.80 66.80", "Total  100.00 100.00", "Raising dust when weighed and sieved: Sucrose laurate",
		"Extraction and a respirator", "Flammable liquids",
	} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not on the paper:\n%s", want, said)
		}
	}
	if len(w.Advice) != 2 || len(w.Advice[0].Steps) != 3 || w.Advice[0].Steps[2].Grams != "1.20" {
		t.Errorf("%+v", w.Advice)
	}
	if a, b := pdfOf(t, p, l, "a4"), pdfOf(t, p, l, "a4"); !bytes.Equal(a, b) || bytes.Equal(a, pdfOf(t, p, l, "letter")) {
		t.Error("two runs differ, or two sizes do not")
	}
	if _, err := p.WeighedPDF(l, "foolscap"); levigate.CodeOf(err) != levigate.Invalid {
		t.Errorf("foolscap: %v", err)
	}
}

func pdfOf(t *testing.T, p *Program, w *Weighed, size string) []byte {
	t.Helper()
	b, err := p.WeighedPDF(w, size)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// Every workshop formula at every size, in portions and pre-mixes: every word of
// the list is on the paper, and none that may not be.
func TestEveryPaper(t *testing.T) {
	portions := 0
	for _, code := range []string{"HP-01", "CM-03", "BL-02", "CB-01", "NG-09"} {
		for batch, balances := range map[string][]string{"50 g": {bench}, "500 g": {bench, "0.1 mg,220 g,s=0.2 mg"}, "20 kg": {"1 g,6 kg,tare=800 g"}} {
			p, l := weighed(t, code, batch, balances...)
			said := words(p.paperOf(l))
			for i := range l.List.Lines {
				x := &l.List.Lines[i]
				for _, want := range append(l.List.Remarks(i), x.Name, l.List.Shown(x.Grams, x.Balance), l.List.Advice(i)) {
					if !strings.Contains(said, want) {
						t.Errorf("%s %s: %q is not on the paper", code, batch, want)
					}
				}
				if x.Portions > 1 {
					portions++
				}
			}
			if never := rules.NeverSaid(said); len(never) > 0 {
				t.Errorf("%s %s says %v", code, batch, never)
			}
			pdfOf(t, p, l, "a4")
		}
	}
	if portions == 0 {
		t.Error("no line in portions: the test sees none")
	}
}

// The general cautions stand on the formula check and not at the balance; what
// raw materials call for stands on both in the same words.
func TestBenchCautions(t *testing.T) {
	f := &levigate.Formula{Lines: []levigate.Line{
		{Match: levigate.Match{Material: &levigate.Material{Name: "Lye", Cautions: []string{"caustic"}}}},
		{Match: levigate.Match{Material: &levigate.Material{Name: "Beeswax", Cautions: []string{"hot-wax"}}}}, {},
	}}
	said := BenchCautions(f)
	if len(said) != 2 || !strings.HasSuffix(Cautions(&levigate.Assessment{Formula: f}), strings.Join(said, " ")) {
		t.Errorf("%q", said)
	}
}
