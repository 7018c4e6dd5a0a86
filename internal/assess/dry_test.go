package assess

import (
	"fmt"
	"strings"
	"testing"

	"levigate"
	"levigate/work"
)

// What is dry has no liquid, whatever its crystals hold: the water of Epsom
// salt dissolves nothing, and a drop of scent makes no oil of a bath salt.
func TestWhatSurroundsTheRest(t *testing.T) {
	for _, c := range []struct {
		name  string
		lines string
		want  levigate.Continuous
	}{
		{"a scented bath salt", "EPS-CR 60, MSA-ME 39.5, LAV-OI 0.5", levigate.NoLiquid},
		{"a fizzing bath", "BIC-PO 57, CIT-AN 25, STA-MA 15, ALM-SW 3", levigate.NoLiquid},
		{"a pressed powder", "TAL-FI 74, MIC-FI 20, MCT-LI 6", levigate.NoLiquid},
		{"a salt scrub in oil", "SAL-SE 80, ALM-SW 20", levigate.OilContinuous},
		{"vitamin C in silicone and oil", "ASC-CR 10, DIM-35 20, MCT-LI 70", levigate.OilContinuous},
		{"salt dissolved in a little water", "WAT-PU 40, SAL-SE 10, ALM-SW 50", levigate.PolarContinuous},
		{"a sugar scrub in glycerin", "SUG-CA 50, GLY-99 20, SUN-HO 30", levigate.PolarContinuous},
		{"a clay mask", "KAO-WH 60, GLY-99 25, SUN-HO 15", levigate.PolarContinuous},
		{"names of substances", "Magnesium Sulfate 60, Sodium Chloride 40", levigate.NoLiquid},
		{"glycerin by its INCI name", "Glycerin 30, Sodium Chloride 5, SUN-HO 65", levigate.PolarContinuous},
	} {
		if a := check(t, lines(c.lines)); a.Continuous != c.want {
			t.Errorf("%s: %s, want %s", c.name, a.Continuous, c.want)
		}
	}
}

// Curves of solutions say nothing of crystals beside crystals.
func TestDryCrystalsHaveNoActivityBySum(t *testing.T) {
	for text, want := range map[string]work.State{"EPS-CR 60, MSA-ME 40": work.Missing, "KAO-WH 80, OAT-CO 20": work.Good, "KAO-WH 96, SAL-SE 4": work.Good, "KAO-WH 94, SAL-SE 6": work.Missing} {
		if f := check(t, lines(text)).Figures.Get("water.activity"); f == nil || f.State != want {
			t.Errorf("%s: %+v", text, f)
		}
	}
}

// lines writes "NAME PERCENT, NAME PERCENT" as a file does.
func lines(text string) string {
	var b strings.Builder
	b.WriteString("lines:\n")
	for _, l := range strings.Split(text, ", ") {
		at := strings.LastIndex(l, " ")
		fmt.Fprintf(&b, "  - {material: %q, percent: %s}\n", l[:at], l[at+1:])
	}
	return b.String()
}
