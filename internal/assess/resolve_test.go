package assess

import (
	"strings"
	"testing"

	"levigate"
	"levigate/formulafile"
	"levigate/internal/library"
)

// What a file's own raw material names and nobody holds is said, with its
// place.
func TestOwnMaterialsAreResolved(t *testing.T) {
	const head = "levigate: formula/1\ncode: T\nname: T\nproduct: hand-wash\nlines:\n  - {material: Aqua, percent: 100}\nmaterials:\n  - "
	for want, own := range map[string]string{
		`named like the INCI name`:          "{name: Kaolin, composition: [{inci: Talc, percent: 100}]}",
		`like "nowhere", which has none on`: "{name: Husk, composition: [{inci: Talc, percent: 100}], isotherm: {like: nowhere}}",
	} {
		f, problems := formulafile.Read("t", []byte(head+own+"\n"))
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		got := f.Resolve(library.New(nil))
		if len(got) != 1 || !strings.Contains(got[0].Text, want) || got[0].Line != 8 || got[0].Help == "" {
			t.Errorf("%s: got %v", own, got)
		}
	}
}

// Readings are pooled at one temperature, those nearest to the check's; one
// without a spread does not undo one that states its own.
func TestReadingsPool(t *testing.T) {
	reading := func(id string, value, plus, celsius float64) levigate.Reading {
		return levigate.Reading{ID: id, Subject: levigate.Subject{Kind: "version", Key: "T"}, Property: "water.activity", Value: value, Plus: plus,
			Conditions: levigate.Conditions{Temperature: celsius}}
	}
	lib := library.New(nil)
	f := formulaOf(t, lib, "Glycerin", "70", "Aqua", "30")
	f.Code = "T"
	a := Check(Request{Formula: f, Library: lib, Conditions: levigate.Conditions{Temperature: 25}, Readings: []levigate.Reading{
		reading("R1", 0.63, 0.01, 25), reading("R2", 0.64, 0, 25), reading("R3", 0.70, 0.01, 40)}})
	fig := a.Figures.Get("water.activity")
	if fig.Reading != "R1" || fig.Value != 0.63 || fig.High-fig.Low < 0.019 {
		t.Errorf("pooled %q %.3f (%.3f–%.3f), want R1 alone", fig.Reading, fig.Value, fig.Low, fig.High)
	}
	b := Check(Request{Formula: f, Library: lib, Conditions: levigate.Conditions{Temperature: 25}, Readings: []levigate.Reading{
		reading("R1", 0.62, 0.01, 25), reading("R4", 0.66, 0.01, 25)}})
	fig = b.Figures.Get("water.activity")
	if fig.Value < 0.6399 || fig.Value > 0.6401 || fig.High < 0.66-1e-9 {
		t.Errorf("two that disagree: %.3f (%.3f–%.3f), want a band that holds both", fig.Value, fig.Low, fig.High)
	}
	said := false
	for _, x := range b.Findings {
		said = said || x.Rule == "W08"
	}
	if !said {
		t.Error("that they disagree was not said")
	}
}
