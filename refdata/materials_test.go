package refdata

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"levigate"
)

func TestBadMaterialsAreRefused(t *testing.T) {
	const head = "code|name|form|grade|water|density|sits|size_um|role|classes|cautions|isotherm|dissolved|source|declared|belongs|storage|use|hlb"
	for row, want := range map[string]string{
		"|Water|liquid|compiled":                                                                           "code and a name",
		"W|Water|liquid|compiled":                                                                          "declared as nothing",
		"W|Water|gas|compiled":                                                                             "column form",
		"W|Water|liquid|compiled|||top":                                                                    "column sits",
		"W|Water|liquid|compiled|||||magic":                                                                "column role",
		"W|Water|liquid|compiled|||||||bites":                                                              "column cautions",
		"W|Water|liquid|compiled|||||||||maybe":                                                            "column dissolved",
		"W|Water|liquid|certain|||||||||||Aqua: 100 c trade-practice":                                      "evidence",
		"W|Water|liquid|compiled|100":                                                                      "want VALUE",
		"W|Water|liquid|compiled||||||||no such curve|||Aqua: 100 c trade-practice":                        "no isotherm",
		"W|Water|liquid|compiled|||||||||||Aqua":                                                           "want NAME: CELL",
		"W|Water|liquid|compiled|||||||||||Aqua: 100":                                                      "want VALUE",
		"W|Water|liquid|compiled|||||||||||Wet: 100 c trade-practice":                                      "not on file",
		"W|Water|liquid|compiled|||||||||||Aqua: 50 c trade-practice; Aqua: 50 c trade-practice":           "stands twice",
		"W|Water|liquid|compiled|||||||||||Aqua: 100 c trade-practice|top":                                 "column belongs",
		"W|Water|liquid|compiled|||||||||||Aqua: 100 c trade-practice||attic":                              "column storage",
		"W|Water|liquid|compiled|||||||||||Aqua: 100 c trade-practice|||5":                                 "column use",
		"W|Water|liquid|compiled|||||||||||Aqua: 100 c trade-practice||||15 m recalled; twelve m recalled": "not a number",
	} {
		if _, err := readMaterial(oneRow(t, head, row, materialColumns...)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: got %v, want an error with %q", row, err, want)
		}
	}
}

func TestSharesComeToAHundred(t *testing.T) {
	for _, m := range Materials() {
		for what, shares := range map[string][]levigate.Share{"declared": m.Declared, "dry": m.Dry} {
			sum := 0.0
			for _, s := range shares {
				sum += s.Percent.Typical
				if s.Substance == nil {
					t.Errorf("%s: %s is not resolved", m.Code, s.INCI)
				}
				if _, ok := m.Marks[what+"/"+s.INCI]; !ok {
					t.Errorf("%s: the share of %s has no mark", m.Code, s.INCI)
				}
				if what == "dry" && s.IsWater() {
					t.Errorf("%s: its dry part holds water", m.Code)
				}
				// Where the supplier declares water, that is the water it holds, give
				// or take what a "99.5 %" partner brings.
				if s.IsWater() && math.Abs(s.Percent.Typical-m.Water.Typical) > 0.5 {
					t.Errorf("%s declares %g %% Aqua and holds %g", m.Code, s.Percent.Typical, m.Water.Typical)
				}
			}
			if len(shares) > 0 && math.Abs(sum-100) > 1e-9 {
				t.Errorf("%s: its %s shares come to %g", m.Code, what, sum)
			}
		}
		if w := m.Water; w.Low < 0 || w.High > 100 {
			t.Errorf("%s holds %v %% water", m.Code, w)
		}
	}
}

func TestEveryNumberHasAMark(t *testing.T) {
	check := func(where, column string, given bool, marks levigate.Marks) {
		if p, ok := marks[column]; ok != given || given && p.From.Key == "" {
			t.Errorf("%s: %s given %v, marked %v", where, column, given, ok)
		}
	}
	words := func(where string, marks levigate.Marks, of map[string]bool) {
		for column, given := range of {
			check(where, column, given, marks)
		}
	}
	for _, e := range Entries() {
		words(e.INCI, e.Marks, map[string]bool{
			"kind": true, "us_name": e.USName != "", "state": e.State != "", "charge": e.Charge != "", "classes": len(e.Classes) > 0,
			"melting": e.Melting.Known(), "hlb": len(e.HLB) > 0, "required_hlb": len(e.RequiredHLB) > 0,
		})
		check(e.INCI, "density", e.Density.Known(), e.Marks)
		check(e.INCI, "molar_mass", e.MolarMass > 0, e.Marks)
		check(e.INCI, "sugar_head", e.SugarHead > 0, e.Marks)
		check(e.INCI, "cas", e.CAS != "", e.Marks)
	}
	for _, m := range Materials() {
		words(m.Code, m.Marks, map[string]bool{
			"form": true, "role": len(m.Role) > 0, "classes": len(m.Classes) > 0, "cautions": len(m.Cautions) > 0, "sits": m.Sits != "",
			"storage": len(m.Storage) > 0, "belongs": m.Belongs != "", "use": m.Use.Known(), "oil_absorption": m.OilAbsorption.Known(), "hlb": len(m.HLB) > 0,
		})
		check(m.Code, "density", m.Density.Known(), m.Marks)
		check(m.Code, "water", m.Water.Known(), m.Marks)
		check(m.Code, "size_um", m.Size.Known(), m.Marks)
	}
}

func TestDensitiesAreOfThisWorld(t *testing.T) {
	in := func(where string, d levigate.Range) {
		if d.Known() && (d.Low < 0.6 || d.High > 8) { // bismuth oxychloride has 7.7
			t.Errorf("%s: density %v", where, d)
		}
	}
	for _, e := range Entries() {
		in(e.INCI, e.Density)
	}
	for _, m := range Materials() {
		in(m.Code, m.Density)
		if !m.Density.Known() {
			t.Errorf("%s has no density", m.Code)
		}
	}
}

func TestPowdersSitWhereTheirSizePutsThem(t *testing.T) {
	for _, m := range Materials() {
		powder := slices.ContainsFunc(m.Declared, func(s levigate.Share) bool { return s.Substance.Kind == levigate.Powder })
		if powder && (m.Sits == "" || !m.Size.Known()) {
			t.Errorf("%s: a powder needs a size and a place to sit", m.Code)
		}
		if m.Sits != "" && (m.Sits == levigate.Grain) != (m.Size.Typical >= levigate.GrainSize) {
			t.Errorf("%s: %g µm and sits %q", m.Code, m.Size.Typical, m.Sits)
		}
		if m.Form == levigate.FinePow && !m.Warns("dust") {
			t.Errorf("%s: a powder without a caution about dust", m.Code)
		}
	}
}

func TestNamesDoNotClash(t *testing.T) {
	owner := map[string]string{}
	claim := func(name, who string) {
		key := strings.ToLower(name)
		if was, taken := owner[key]; taken {
			t.Errorf("%q is a name of %s and of %s", name, was, who)
		}
		owner[key] = who
	}
	us := map[string]levigate.Substance{}
	for _, e := range Entries() {
		claim(e.INCI, e.INCI)
		for _, a := range e.Aliases {
			claim(a, e.INCI)
		}
		if e.USName != "" {
			us[strings.ToLower(e.USName)] = *e.Substance
		}
	}
	for _, m := range Materials() {
		// A plain name that is also a US label name is allowed where it can only
		// mean that raw material: "Rice starch" is rice starch and nothing else.
		if s, ok := us[strings.ToLower(m.Name)]; ok {
			if len(m.Declared) != 1 || m.Declared[0].INCI != s.INCI {
				t.Errorf("%s is named like the US name of %s and is not that alone", m.Code, s.INCI)
			}
			continue
		}
		claim(m.Name, m.Code)
	}
	for _, m := range Materials() {
		claim(m.Code, m.Code)
	}
}

func TestDeliveredWithWater(t *testing.T) {
	// driest is the least water a substance can be bought with.
	driest := map[string]float64{}
	for _, m := range Materials() {
		if inci := mostly(m); inci != "" {
			if w, ok := driest[inci]; !ok || m.Water.Typical < w {
				driest[inci] = m.Water.Typical
			}
		}
	}
	for _, e := range Entries() {
		if e.Alone != "" {
			if _, ok := Material(e.Alone); !ok {
				t.Errorf("%s stands for %s, which is not on file", e.INCI, e.Alone)
			}
			continue
		}
		if e.Delivered == "" {
			if e.Kind != levigate.Water && driest[e.INCI] >= 1.5 {
				t.Errorf("%s can't be had drier than %g %% and says nothing", e.INCI, driest[e.INCI])
			}
			continue
		}
		m, ok := Material(e.Delivered)
		if !ok || mostly(m) != e.INCI || m.Water.Typical < 1 {
			t.Errorf("%s is not delivered as %s", e.INCI, e.Delivered)
		}
	}
}

// mostly names the substance that is nearly all of what is declared besides
// water; empty for a true blend.
func mostly(m *levigate.Material) string {
	water := 0.0
	for _, s := range m.Declared {
		if s.IsWater() {
			water = s.Percent.Typical
		}
	}
	for _, s := range m.Declared {
		if !s.IsWater() && s.Percent.Typical > 0.8*(100-water) {
			return s.INCI
		}
	}
	return ""
}

// The raw materials of the five demo formulas, keyed a second time from the
// page they were worked out on: code, water typical low high, density.
func TestDemoRawMaterials(t *testing.T) {
	for _, line := range strings.Split(strings.TrimSpace(demoMaterials), "\n") {
		f := strings.Split(line, "|")
		m, ok := Material(f[0])
		if !ok {
			t.Errorf("%s is not on file", f[0])
			continue
		}
		if m.Name != f[1] {
			t.Errorf("%s is named %q, want %q", f[0], m.Name, f[1])
		}
		var n [4]float64
		for i := range n {
			n[i], _ = strconv.ParseFloat(f[i+2], 64)
		}
		if m.Water.Typical != n[0] || f[3] != "" && (m.Water.Low != n[1] || m.Water.High != n[2]) || m.Density.Typical != n[3] {
			t.Errorf("%s: water %v, density %v; want %v", f[0], m.Water, m.Density, n)
		}
	}
}
