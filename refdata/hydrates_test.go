package refdata

import (
	"strings"
	"testing"

	"levigate"
)

// crystalWater is how many molecules of water a name says stand beside one of
// the substance.
var crystalWater = map[string]float64{
	"hemihydrate": 0.5, "monohydrate": 1, "dihydrate": 2, "trihydrate": 3, "pentahydrate": 5, "hexahydrate": 6, "heptahydrate": 7,
	"decahydrate": 10, "dodecahydrate": 12,
}

// byFormula is the water a hydrate holds by its name and molar mass, g per
// 100 g; false for what is no hydrate or has no molar mass.
func byFormula(m *levigate.Material) (float64, bool) {
	if len(m.Declared) != 1 || m.Declared[0].Substance.MolarMass == 0 {
		return 0, false
	}
	for _, word := range strings.FieldsFunc(strings.ToLower(m.Name), func(r rune) bool { return r == ' ' || r == ',' || r == '(' }) {
		if n, ok := crystalWater[word]; ok {
			water := n * 18.015
			return 100 * water / (water + m.Declared[0].Substance.MolarMass), true
		}
	}
	return 0, false
}

func hydrateFits(m *levigate.Material) bool {
	want, ok := byFormula(m)
	return !ok || m.Water.Low <= want && want <= m.Water.High+0.1 && m.Water.Typical > 0.9*want && m.Water.Typical < want+0.1
}

// A hydrate holds the water its name says: a range that leaves it out, or a
// formula that already counts it, would shift every sum of water.
func TestHydratesHoldTheWaterOfTheirNames(t *testing.T) {
	n := 0
	for _, m := range Materials() {
		if want, ok := byFormula(m); ok {
			n++
			if !hydrateFits(m) {
				t.Errorf("%s holds %v %% water, %.2f by formula", m.Code, m.Water, want)
			}
		}
	}
	if n < 8 {
		t.Errorf("only %d hydrates", n)
	}
	glucose, _ := Substance("Glucose")
	wet := levigate.Material{
		Name: "Glucose, monohydrate", Declared: []levigate.Share{{INCI: "Glucose", Substance: glucose}}, Water: levigate.Range{Typical: 9, Low: 8, High: 9.5},
	}
	if !hydrateFits(&wet) {
		t.Error("glucose monohydrate with 9 % water is refused")
	}
	for _, slip := range []levigate.Range{{}, {Typical: 10, Low: 9.2, High: 12}, {Typical: 5, Low: 4, High: 9.5}} {
		wet.Water = slip
		if hydrateFits(&wet) {
			t.Errorf("glucose monohydrate with %v %% water passes", slip)
		}
	}
}
