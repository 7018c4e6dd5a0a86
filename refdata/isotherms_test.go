package refdata

import (
	"math"
	"strings"
	"testing"

	"levigate"
	"levigate/cite"
)

func TestIsothermsAreFound(t *testing.T) {
	for name, model := range map[string]levigate.Model{
		"glycerol": levigate.FloryHuggins, "sodium chloride": levigate.Pitzer, "kaolin": levigate.GAB,
		"activated charcoal": levigate.Points, "plant oil": levigate.Linear,
	} {
		iso, ok := Isotherm(name)
		if !ok || iso.Model != model || iso.Name != name || len(iso.Sources) == 0 {
			t.Errorf("%s: %+v", name, iso)
		}
	}
	if _, ok := Isotherm("unobtainium"); ok {
		t.Error("an isotherm that is not on file was found")
	}
	if oil, _ := Isotherm("plant oil"); math.Abs(oil.AtOne.Typical-0.0012) > 1e-15 {
		t.Errorf("plant oil holds %g g/g; the table is in g/100 g", oil.AtOne.Typical)
	}
}

// A good grade is only for what was measured.
func TestUnmeasuredIsGradedLow(t *testing.T) {
	for _, iso := range Isotherms() {
		if iso.Basis != "measured" && iso.Grade > cite.Estimated {
			t.Errorf("%s: basis %s, grade %s", iso.Name, iso.Basis, iso.Grade)
		}
	}
}

func TestMeasuredPoints(t *testing.T) {
	all := Measured()
	if len(all) < 800 {
		t.Fatalf("only %d points", len(all))
	}
	seen := map[string]bool{}
	for _, p := range all {
		if _, ok := cite.Find(p.From.Key); !ok {
			t.Errorf("%s: source %q", p.At, p.From.Key)
		}
		if seen[p.At] {
			t.Errorf("%s is listed twice", p.At)
		}
		seen[p.At] = true
		for _, part := range p.Parts {
			// Malonic acid waits for an isotherm of its own.
			if _, ok := Isotherm(part.Substance); !ok && part.Substance != "malonic acid" {
				t.Errorf("%s: no isotherm for %q", p.At, part.Substance)
			}
		}
	}
}

// One point stands in one table once: a row that came in twice would weigh
// twice in every fit.
func TestNoPointIsThereTwice(t *testing.T) {
	for _, name := range Names() {
		if !strings.HasPrefix(name, "measured/") {
			continue
		}
		seen := map[string]int{}
		for _, r := range mustOpen(name).Rows {
			key := strings.Join(r.cells, "\t")
			if line, dup := seen[key]; dup {
				t.Errorf("%s is row %d again", r.At(), line)
			}
			seen[key] = r.Line
		}
	}
}

func TestHoneyAddsUp(t *testing.T) {
	for _, p := range Measured() {
		if p.Table == "abramovic2008" && p.Activity == 0.479 {
			if math.Abs(p.Water()-0.14) > 1e-12 || !p.Has("fructose") || p.Of("fructose") {
				t.Errorf("%+v: want 14 %% water and the sugars of the mean honey", p)
			}
			return
		}
	}
	t.Error("the honey with activity 0.479 is gone")
}
