package main

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"levigate/calc/water"
	"levigate/refdata"
)

// The table in the repository is what the measured points give.
func TestTableIsWhatThePointsGive(t *testing.T) {
	have, err := os.ReadFile(filepath.Join("..", "..", "refdata", "isotherms", "solutes.tsv"))
	if err != nil {
		t.Fatal(err)
	}
	if string(have) != card(string(have))+table(fitted(refdata.Measured())) {
		t.Error("solutes.tsv would change; run go run ./tools/refit and look at the difference")
	}
}

// A fit to points made from a known curve finds that curve, temperature and
// all, when it starts on the right side of the fold (see plan.start).
func TestFitFindsAKnownCurve(t *testing.T) {
	want := water.Params{MolarMass: 92, Ions: 1, R: 5, Chi: 0.3, Slope: -200}
	var points []refdata.Point
	for _, celsius := range []float64{0, 25, 50} {
		c := water.NewCurve(want, celsius)
		for share := 0.1; share < 0.95; share += 0.1 {
			points = append(points, refdata.Point{Table: "made", Celsius: celsius, Activity: c.Activity((1 - share) / share),
				Parts: []refdata.Part{{Substance: "x", Share: share}}})
		}
	}
	p := plan{name: "x", molarMass: 92, start: 9, slope: true, fit: map[string]float64{"made": 0.001}}
	got := p.run(points, library{}).params
	if math.Abs(got.R-want.R) > 2e-3 || math.Abs(got.Chi-want.Chi) > 1e-3 || math.Abs(got.Slope-want.Slope) > 1 {
		t.Errorf("got %+v", got)
	}
}

// However the points pull, the fitted curve never parts into two liquids
// between −16 and 60 °C.
func TestFitKeepsTheMargin(t *testing.T) {
	var points []refdata.Point
	for _, share := range []float64{0.2, 0.4, 0.6} { // three strengths, one activity
		points = append(points, refdata.Point{Table: "made", Celsius: 25, Activity: 0.9, Parts: []refdata.Part{{Substance: "x", Share: share}}})
	}
	p := plan{name: "x", molarMass: 92, size: 5, slope: true, fit: map[string]float64{"made": 0.001}}
	got := p.run(points, library{}).params
	if left := room(got); left < chiMargin-1e-3 {
		t.Errorf("%+v leaves %.4f", got, left)
	}
}

// What is kept aside is never among what is fitted.
func TestAsideIsNotFitted(t *testing.T) {
	for _, r := range fitted(refdata.Measured()) {
		seen := map[string]bool{}
		for _, m := range r.fitted {
			seen[m.At] = true
		}
		for _, m := range r.held {
			if seen[m.At] {
				t.Errorf("%s: %s is fitted and kept aside", r.name, m.At)
			}
		}
	}
}
