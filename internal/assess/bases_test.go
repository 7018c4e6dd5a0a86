package assess

import (
	"math"
	"testing"

	"levigate"
)

// A ready gel base is glycerin with drops of oil in it: weighed as one raw
// material it crowds a gel as its parts do.
func TestAGelBaseCrowdsAsItsParts(t *testing.T) {
	base := check(t, `
lines:
  - {phase: A, material: House gel base, percent: 40}
  - {phase: B, material: "Olive oil, refined", percent: 60}
materials:
  - name: House gel base
    composition: [{inci: Glycerin, percent: 60}, {inci: Olea Europaea Fruit Oil, percent: 30}, {inci: Sucrose Laurate, percent: 10}]
`)
	parts := check(t, `
lines:
  - {phase: A, material: Glycerin, percent: 24}
  - {phase: A, material: Olea Europaea Fruit Oil, percent: 12}
  - {phase: A, material: Sucrose Laurate, percent: 4}
  - {phase: B, material: "Olive oil, refined", percent: 60}
`)
	for _, id := range []string{"structure.internal-fraction", "structure.volume-oil", "structure.volume-polar"} {
		if a, b := value(t, base, id), value(t, parts, id); math.Abs(a-b) > 0.005*b {
			t.Errorf("%s: %g as a base, %g as its parts", id, a, b)
		}
	}
}

// Dry salt makes no polar liquid: in oil it is grains until something that
// pours could dissolve it. The water of its crystals stays there.
func TestDrySaltInOilIsNoLiquid(t *testing.T) {
	for _, c := range []struct {
		name, lines string
		want        levigate.Continuous
	}{
		{"sea salt", `{material: Sodium Chloride, percent: 60}`, levigate.OilContinuous},
		{"Epsom salt", `{material: EPS-CR, percent: 60}`, levigate.OilContinuous},
		{"a bath powder in oil", `{material: Sodium Bicarbonate, percent: 40}, {material: Citric Acid, percent: 20}`, levigate.OilContinuous},
		{"with glycerin", `{material: Sodium Chloride, percent: 50}, {material: Glycerin, percent: 10}`, levigate.PolarContinuous},
		{"with syrup", `{material: Sucrose, percent: 50}, {material: "Honey, runny", percent: 10}`, levigate.PolarContinuous},
		{"salt of the file's own", `{material: Grandmother's salt, percent: 60}`, levigate.OilContinuous},
	} {
		text := "lines: [" + c.lines + `, {material: "Olive oil, refined", percent: 40}]` + "\n"
		if c.name == "salt of the file's own" {
			text += "materials: [{name: Grandmother's salt, composition: [{inci: Sodium Chloride, percent: 100}]}]\n"
		}
		a := check(t, text)
		if a.Continuous != c.want {
			t.Errorf("%s: %s is continuous, want %s", c.name, a.Continuous, c.want)
			continue
		}
		if c.want != levigate.OilContinuous {
			continue
		}
		if v := value(t, a, "structure.volume-polar"); v != 0 {
			t.Errorf("%s: %g mL of polar liquid", c.name, v)
		}
		if v := value(t, a, "water.oil-dissolved"); v > 0.06 {
			t.Errorf("%s: the oils are said to hold %g g of water", c.name, v)
		}
	}
}
