package refdata

import (
	"math"
	"slices"
	"strings"
	"testing"

	"levigate/cite"
)

const demoMaterials = `
GLY-99|Glycerin, vegetable, 99.5 %|0.5|0.2|2.0|1.258
GLY-86|Glycerin, 86.5 %|13.5|12|16|1.226
WAT-PU|Purified water|100|||0.998
SUL-HM|Sucrose laurate powder, high monoester|2|0.5|4|1.20
SUN-HO|Sunflower oil, high-oleic, refined|0.05|0.02|0.10|0.912
MCT-LI|Caprylic/capric triglyceride, liquid|0.05|0.02|0.10|0.948
TOC-70|Mixed tocopherols 70 % in sunflower oil|0.05|||0.945
KAO-WH|Kaolin, fine white|1.0|0.5|1.5|2.60
STA-MA|Maize starch|12|10|14|1.50
STA-RI|Rice starch|12|10|14|1.50
WAL-SH|Walnut shell powder, 150–400 µm|8|5|10|1.35
BEN-NA|Bentonite, sodium|10|6|13|2.50
CLA-GR|Green clay (illite, holds iron)|5|3|8|2.70
HON-RU|Honey, runny|17.2|15|20|1.42
ALO-GE|Aloe leaf gel, thickened, from powder|98|97|99|1.01
ORA-SW|Sweet orange peel oil|0|||0.845
LAV-OI|Lavender oil|0|||0.885
XAN-80|Xanthan gum, 80 mesh|10|||1.50
SBE-GR|Sodium benzoate, granules|0|||1.50
PSO-GR|Potassium sorbate, granules|0|||1.36
PAN-75|Panthenol 75 %|25|||1.14
LAC-80|Lactic acid 80 %|20|||1.19
BZA-LI|Benzyl alcohol, liquid|0|||1.042
SHE-RE|Shea butter, refined|0.06|0.02|0.10|0.92
PET-WH|Petrolatum, white|0|||0.87
CET-FL|Cetyl alcohol, flakes|0|||0.90
DIM-35|Dimethicone, 350 mm²/s|0|||0.968
SOS-FL|Sorbitan stearate, flakes|0|||1.00
POS-60|Polysorbate 60, liquid|3|||1.07
JOJ-GO|Jojoba oil|0.04|||0.868
CAS-CP|Castor oil|0.15|0.05|0.30|0.961
BEE-WH|Beeswax, white|0.10|0.05|0.30|0.96
LAN-AN|Lanolin, anhydrous|0.15|0.05|0.50|0.94
SEA-BU|Sea buckthorn fruit oil|0.05|||0.92
ASC-CR|L-ascorbic acid|0|||1.65
CIT-AN|Citric acid, anhydrous|0|||1.665
NAH-10|Sodium hydroxide solution 10 %|90|||1.11
EWX-NI|Emulsifying wax, non-ionic|0|||0.93
CSA-FL|Cetearyl alcohol, flakes|0|||0.90
PEH-90|Preservative blend PE 90|0|||1.10
BAK-LI|Bakuchiol, liquid|0|||0.96
`

func TestGrowthLimitsAndCriteria(t *testing.T) {
	// Keyed again from the page of reference points.
	want := map[string]float64{
		"Pseudomonas fluorescens": 0.97, "Pseudomonas aeruginosa": 0.97, "Escherichia coli": 0.95, "Bacillus subtilis": 0.90,
		"most bacteria": 0.90, "Staphylococcus aureus": 0.86, "most moulds": 0.80, "Aspergillus brasiliensis": 0.77,
		"halophilic bacteria": 0.75, "Wallemia sebi": 0.69, "xerophilic moulds": 0.65, "Zygosaccharomyces rouxii": 0.62,
		"Xeromyces bisporus": 0.61, "Aspergillus penicillioides": 0.585,
	}
	seen := map[string]bool{}
	for _, g := range GrowthLimits() {
		if w, ok := want[g.Organism]; ok && g.Activity.Typical != w {
			t.Errorf("%s: %g, want %g", g.Organism, g.Activity.Typical, w)
		}
		if seen[g.Organism] || g.Activity.Low < 0.55 || g.Activity.High > 0.98 || g.From.From.Key == "" {
			t.Errorf("%+v", g)
		}
		if g.InPolyol != 0 && g.Kind != "bacterium" || g.InPolyol > 0 {
			t.Errorf("%s: %g in a polyol", g.Organism, g.InPolyol)
		}
		seen[g.Organism] = true
	}
	for o := range want {
		if !seen[o] {
			t.Errorf("%s is missing", o)
		}
	}
	var at []float64
	for _, c := range Criteria() {
		at = append(at, c.Activity)
		if !strings.HasPrefix(c.Figure, "water.reserve") || c.Says == "" {
			t.Errorf("%+v", c)
		}
	}
	if !slices.Equal(at, []float64{0.60, 0.70, 0.75, 0.80}) {
		t.Errorf("criteria at %v", at)
	}
}

func TestPreservativeLimits(t *testing.T) {
	// Entry and use against the limit, keyed again from the annex.
	want := map[string]float64{
		"1 rinse-off": 2.5, "1 oral": 1.7, "1 leave-on": 0.5, "3 leave-on": 0.5, "4 leave-on": 0.6, "4 rinse-off": 0.6,
		"13 leave-on": 0.6, "29 leave-on": 1.0, "29 rinse-off": 1.0, "34 leave-on": 1.0, "44 rinse-off": 0.1,
		"12 leave-on": 0.4, "12a leave-on": 0.14, "21 oral": 0.1, "22 leave-on": 0.15, "27 rinse-off": 0.6, "33 leave-on": 0.6,
		"35 rinse-off": 1.0, "35 leave-on": 0.5, "38 leave-on": 0.1, "39 rinse-off": 0.0015, "42 leave-on": 0.3, "46 leave-on": 0.5,
		"50 leave-on": 0.3, "51 leave-on": 0.5, "60 leave-on": 0.7,
	}
	covered := map[string]bool{}
	for _, p := range PreservativeLimits() {
		for _, use := range p.Use {
			key := p.Entry + " " + use
			if w, ok := want[key]; ok && p.Limit != w {
				t.Errorf("%s: %g, want %g", key, p.Limit, w)
			}
			delete(want, key)
		}
		if p.From.Mark != cite.Read || p.From.From.At != "V/"+p.Entry {
			t.Errorf("entry %s: %+v", p.Entry, p.From)
		}
		for _, s := range p.Substances {
			covered[s.INCI] = true
			if s.Factor <= 0 || s.Factor > 1 {
				t.Errorf("%s counts as %g", s.INCI, s.Factor)
			}
		}
	}
	for key := range want {
		t.Errorf("%s has no row", key)
	}
	for _, e := range Entries() {
		if e.Is("preservative") && !covered[e.INCI] {
			t.Errorf("%s is a preservative without a limit on file", e.INCI)
		}
	}
	for _, r := range mustOpen("limits/factors").Rows {
		units, err := r.Number("units")
		if err != nil {
			t.Fatal(err)
		}
		f, _, err := r.Cell("factor")
		if err != nil {
			t.Fatal(err)
		}
		if got := units * molarMass(t, r.Text("its_formula")) / molarMass(t, r.Text("chemical_formula")); math.Abs(got-f.Typical) > 6e-5 {
			t.Errorf("%s: factor %g, computed %.4f", r.Text("substance"), f.Typical, got)
		}
	}
}
