package formulafile

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"levigate"
)

var update = flag.Bool("update", false, "write the .want files anew; then read each of them")

// files lists the test files of a folder.
func files(t testing.TB, folder string) []string {
	t.Helper()
	names, err := filepath.Glob(filepath.Join("testdata", folder, "*.yaml"))
	if err != nil || len(names) == 0 {
		t.Fatalf("no files in testdata/%s: %v", folder, err)
	}
	return names
}

func bytesOf(t testing.TB, name string) []byte {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// The gallery: every broken file and the whole of what is said about it.
func TestBroken(t *testing.T) {
	for _, name := range files(t, "bad") {
		t.Run(filepath.Base(name), func(t *testing.T) {
			f, problems := Read(name, bytesOf(t, name))
			if f != nil || len(problems) == 0 {
				t.Fatal("was read without a problem")
			}
			for _, p := range problems {
				if p.Line < 1 || p.Column < 1 || p.Text == "" || p.Help == "" {
					t.Errorf("a problem lacks its place, text or help: %+v", p)
				}
			}
			got := Format(problems, filepath.Base(name))
			want := strings.TrimSuffix(name, ".yaml") + ".want"
			if *update {
				if err := os.WriteFile(want, []byte(got), 0o666); err != nil {
					t.Fatal(err)
				}
			}
			if got != string(bytesOf(t, want)) {
				t.Errorf("got\n%swant\n%s", got, bytesOf(t, want))
			}
		})
	}
}

// A file that is right is read, and comes back from Write as it was.
func TestGood(t *testing.T) {
	for _, name := range files(t, "good") {
		t.Run(filepath.Base(name), func(t *testing.T) {
			f, problems := Read(name, bytesOf(t, name))
			if len(problems) > 0 {
				t.Fatalf("got\n%s", Format(problems, name))
			}
			comesBack(t, f)
		})
	}
}

// What each key becomes.
func TestValues(t *testing.T) {
	f := read(t, `
levigate: formula/1
code: HP-01
name: Walnut hand polish
product: hand-wash
lines:
  - {phase: A, material: "Glycerin, vegetable", percent: 26.50}
  - {phase: B, material: Sunflower oil, qs: true}
  - {phase: C, material: Walnut shell, percent: "7.000001", sits: grain}
materials:
  - name: Oat grits
    code: OAT
    density: 1400 kg/m3
    composition: [{inci: Oats, percent: 99.5, low: 99, high: 99.9}, {inci: Aqua, percent: 0.5}]
    water: {percent: 10, low: 8, high: 12}
    isotherm: {gab: [0.07, 15, 0.75]}
    sits: grain
    evidence: measured by supplier
    source: data sheet
  - {name: Oil, composition: [{inci: Oil, percent: 100}], isotherm: {linear: 0.0012}}
  - {name: Starch, composition: [{inci: Starch, percent: 100}], isotherm: {like: Maize starch}, sits: oil}
making:
  - {step: 1, phase: A, text: Warm, temperature: 140 °F, minutes: 1.5 h}
batch: 1.25 kg
markets: [eu, us]
claims: [low-water]
use: {area: [hands], eye: false, spray: true, under-3: true}
pack: TUBE
notes: |
  Two
  lines
`)
	oat, oil, starch := f.Materials[0], f.Materials[1], f.Materials[2]
	for name, ok := range map[string]bool{
		"heads":       f.Code == "HP-01" && f.Name == "Walnut hand polish" && f.Product == "hand-wash" && f.Pack == "TUBE",
		"first line":  f.Lines[0].Phase == "A" && f.Lines[0].Name == "Glycerin, vegetable" && f.Lines[0].Percent.String() == "26.5",
		"qs line":     f.Lines[1].QS && f.Lines[1].Percent.String() == "66.499999",
		"exact":       f.Lines[2].Percent.String() == "7.000001" && f.Lines[2].Sits == levigate.Grain && f.Total().String() == "100",
		"place":       f.Lines[2].Place == levigate.Place{Line: 8, Column: 5},
		"batch":       f.Batch.String() == "1250",
		"lists":       len(f.Markets) == 2 && f.Markets[1] == "us" && f.Claims[0] == "low-water",
		"use":         len(f.Use.Area) == 1 && !f.Use.Eye && f.Use.Spray && f.Use.Under3,
		"notes":       f.Notes == "Two\nlines",
		"step":        f.Making[0] == levigate.Step{Number: "1", Phase: "A", Text: "Warm", Temperature: 60, HasTemp: true, Minutes: 90},
		"own":         oat.Origin == levigate.OfFormula && oat.Code == "OAT" && oat.Form == levigate.Grains && oil.Form == levigate.Liquid && starch.Form == levigate.FinePow,
		"density":     oat.Density == levigate.Exactly(1.4),
		"composition": len(oat.Declared) == 2 && oat.Declared[0] == levigate.Share{INCI: "Oats", Percent: levigate.Range{Typical: 99.5, Low: 99, High: 99.9}} && oat.Declared[1].Percent == levigate.Exactly(0.5),
		"water":       oat.Water == levigate.Range{Typical: 10, Low: 8, High: 12},
		"gab":         oat.Isotherm.Model == levigate.GAB && oat.Isotherm.M0 == 0.07 && oat.Isotherm.C == 15 && oat.Isotherm.K == 0.75 && oat.Isotherm.Name == "Oat grits",
		"linear":      oil.Isotherm.Model == levigate.Linear && oil.Isotherm.AtOne == levigate.Exactly(0.0012),
		"like":        starch.Isotherm.Model == "" && starch.Isotherm.Name == "Maize starch",
		"evidence":    oat.Grade.String() == "measured by supplier" && oat.Isotherm.Grade == oat.Grade && oil.Grade.String() == "assumed" && oat.Source == "data sheet",
	} {
		if !ok {
			t.Errorf("%s: not as written", name)
		}
	}
}

// read reads a formula written in a test.
func read(t testing.TB, text string) *levigate.Formula {
	t.Helper()
	f, problems := Read("test", []byte(strings.TrimPrefix(text, "\n")))
	if len(problems) > 0 {
		t.Fatalf("got\n%s", Format(problems, "test"))
	}
	return f
}
