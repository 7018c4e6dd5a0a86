package assess

import (
	"fmt"
	"testing"

	"levigate"
	"levigate/work"
)

const sunflower = "  - {material: \"Sunflower oil, high-oleic, refined\", qs: true}\n"

func activityOf(t *testing.T, lines string) *work.Figure {
	t.Helper()
	return check(t, "lines:\n"+lines).Figures.Get("water.activity")
}

// Beside undissolved crystals the activity is that of their saturation,
// whichever side of the jump the root was found on.
func TestBandBesideCrystals(t *testing.T) {
	for water := 1; water <= 10; water++ {
		for _, salt := range []string{"Sucrose", "Sodium Chloride", "Urea", "Fructose"} {
			f := activityOf(t, fmt.Sprintf("  - {material: %s, percent: 60}\n  - {material: Aqua, percent: %d}\n", salt, water)+sunflower)
			if f.High-f.Low > 0.06 || f.High-f.Low < 0.02 {
				t.Errorf("%s and %d g of water: %.3f (%.3f–%.3f)", salt, water, f.Value, f.Low, f.High)
			}
		}
	}
}

// More water never lowers either end of the band by more than a hair, and the
// strongest solutions are not said to reach where the weak ones are.
func TestBandRisesWithWater(t *testing.T) {
	var last levigate.Range
	for i := 1; i <= 60; i++ {
		f := activityOf(t, fmt.Sprintf("  - {material: Glycerin, percent: %d}\n  - {material: Aqua, percent: %d}\n", 100-i, i))
		if f.Low < last.Low-0.005 || f.High < last.High-0.005 {
			t.Errorf("%d g of water: band %.3f–%.3f after %.3f–%.3f", i, f.Low, f.High, last.Low, last.High)
		}
		last = levigate.Range{Low: f.Low, High: f.High}
	}
}

// A wet product with esters and glucosides is wet: their heads widen the band
// by what a sugar in their place would, not more.
func TestHeadsInPlentyOfWater(t *testing.T) {
	for _, emulsifier := range []string{"Decyl Glucoside", "Sucrose Laurate", "Sorbitan Stearate"} {
		f := activityOf(t, "  - {material: "+emulsifier+", percent: 10}\n  - {material: Aqua, percent: 80}\n"+sunflower)
		if f.Value < 0.97 || f.Low < 0.9 {
			t.Errorf("%s: %.3f (%.3f–%.3f)", emulsifier, f.Value, f.Low, f.High)
		}
	}
}

// Below what was measured the figure says so and is no exact nought.
func TestTooDryIsSaid(t *testing.T) {
	f := activityOf(t, "  - {material: Glycerin, percent: 100}\n")
	if f.State != work.OutOfRange || f.High < 0.02 || len(f.Notes) == 0 {
		t.Errorf("dry glycerin: %g (%g–%g) %s %q", f.Value, f.Low, f.High, f.State, f.Notes)
	}
}

// Powders in a balm share the water with the oils; what the starch binds makes
// no drops.
func TestPowderInBalmBindsWater(t *testing.T) {
	a := check(t, "lines:\n  - {material: Maize starch, percent: 25}\n  - {material: \"Beeswax, white\", percent: 15}\n"+sunflower)
	dissolved, total := value(t, a, "water.oil-dissolved"), value(t, a, "water.total")
	if !(dissolved < 0.1*total) {
		t.Errorf("%.3f g of %.3f g is said to be dissolved in the oils", dissolved, total)
	}
	for _, f := range a.Findings {
		if f.Rule == "W05" && f.Severity == levigate.Warn && f.Verdict == levigate.Broken {
			t.Errorf("drops are said to form: %s", f.Text)
		}
	}
}

// A file's own salt is crystals like any other.
func TestOwnSaltIsCrystals(t *testing.T) {
	a := check(t, "lines:\n  - {material: Sel, percent: 30}\n  - {material: Aqua, percent: 5}\n"+sunflower+
		"materials:\n  - {name: Sel, composition: [{inci: Sodium Chloride, percent: 100}], water: {percent: 0.1}}\n")
	if v := value(t, a, "water.activity"); v < 0.75 || v > 0.76 {
		t.Errorf("own salt and a little water: %.4f", v)
	}
}

// Along the rinse path, too, crystals do not blow the band up.
func TestRinseBandBesideCrystals(t *testing.T) {
	a := check(t, "lines:\n  - {material: Sucrose, percent: 50}\n  - {material: Aqua, percent: 3}\n"+sunflower)
	for _, c := range a.Curves {
		if c.ID != "water.rinse" {
			continue
		}
		for i, y := range c.Y.Values {
			if c.High[i]-c.Low[i] > 0.08 || y < 0.8 {
				t.Errorf("after %g g: %.3f (%.3f–%.3f)", c.X.Values[i], y, c.Low[i], c.High[i])
			}
		}
	}
}
