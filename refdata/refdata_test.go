package refdata

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"levigate"
	"levigate/cite"
)

// alone are the substances that must be usable as a line by themselves,
// whether or not a raw material holds them.
var alone = strings.Split("Aqua;Glycerin;Propanediol;Propylene Glycol;Butylene Glycol;Sorbitol;Xylitol;Mannitol;Erythritol;Sucrose;"+
	"Glucose;Fructose;Maltose;Maltodextrin;Urea;Sodium Chloride;Potassium Chloride;Glycine;Alanine;Proline;Serine;Betaine;Lactic Acid;"+
	"Citric Acid;Sodium Lactate;Sodium PCA;Mel;Zea Mays Starch;Kaolin", ";")

func TestEveryTableOpensWithItsCard(t *testing.T) {
	names := Names()
	if len(names) < 10 {
		t.Fatalf("only %d tables are embedded", len(names))
	}
	for _, name := range names {
		if _, err := Open(name); err != nil {
			t.Error(err)
		}
	}
	for _, name := range slices.Concat(substanceTables, materialTables) {
		if !slices.Contains(names, name) {
			t.Errorf("%s is not embedded", name)
		}
	}
	for _, name := range names {
		folder, _, _ := strings.Cut(name, "/")
		known := slices.Concat(substanceTables, materialTables, []string{"substances/classes", "materials/declared", "materials/dry"})
		if (folder == "substances" || folder == "materials") && !slices.Contains(known, name) {
			t.Errorf("%s is embedded and nobody reads it", name)
		}
	}
}

func TestBadCardsAreRefused(t *testing.T) {
	good := "title: T\nsource: recalled\nunits: g\nkeyed: once\nlicence: facts\nmark: from memory\n"
	if _, err := parseTable("t", good, "a\tb\n1\t2\n"); err != nil {
		t.Fatal(err)
	}
	for old, want := range map[string]string{
		"licence: facts\n": "needs licence", "title: T\n": "needs title", "source: recalled\n": "needs source",
		"mark: from memory\n": "needs mark", "units: g\n": "needs units",
	} {
		refused(t, strings.Replace(good, old, "", 1), "a\tb\n1\t2\n", want)
	}
	refused(t, strings.Replace(good, "recalled", "nobody1999", 1), "a\n1\n", "not in the bibliography")
	refused(t, strings.Replace(good, "from memory", "certain", 1), "a\n1\n", "mark")
	refused(t, good+"colour: red\n", "a\n1\n", "not a card's key")
	refused(t, good, "a\tb\n1\n", "1 cells")
	refused(t, good, "a\ta\n1\t2\n", "twice")
	refused(t, good, "a\n", "no rows")
}

func refused(t *testing.T, card, table, want string) {
	t.Helper()
	if _, err := parseTable("t", card, table); err == nil || !strings.Contains(err.Error(), want) {
		t.Errorf("got %v, want an error with %q", err, want)
	}
}

func TestCellsNeedAMarkAndASource(t *testing.T) {
	for cell, want := range map[string]string{
		"1.2": "want VALUE", "1.2 m": "want VALUE", "1.2 x recalled": "mark", "1.2 m nobody1999": "bibliography",
		"1 2 3 m recalled": "between", "a m recalled": "not a number",
	} {
		if _, _, err := oneRow(t, "v", cell).Cell("v"); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: got %v, want an error with %q", cell, err, want)
		}
	}
	v, p, err := oneRow(t, "v", "12 10 14 r eu-annexes@V/29").Cell("v")
	if err != nil || v != (levigate.Range{Typical: 12, Low: 10, High: 14}) || p.Mark != cite.Read || p.From.At != "V/29" {
		t.Errorf("got %v %v %v", v, p, err)
	}
}

// oneRow makes a table of one row from a heading and cells, both with | as tab;
// cells left out at the end are empty.
func oneRow(t *testing.T, head, cells string) Row {
	t.Helper()
	cells += strings.Repeat("|", strings.Count(head, "|")-strings.Count(cells, "|"))
	card := "title: T\nsource: recalled\nunits: g\nkeyed: once\nlicence: facts\nmark: from memory\n"
	table, err := parseTable("t", card, strings.ReplaceAll(head+"\n"+cells+"\n", "|", "\t"))
	if err != nil {
		t.Fatal(err)
	}
	return table.Rows[0]
}

func TestBadSubstancesAreRefused(t *testing.T) {
	const head = "inci|kind|us_name|aliases|cas|chemical_formula|molar_mass|density|isotherm|sugar_head|head_like|classes|delivered_by|alone|notes"
	for row, want := range map[string]string{
		"Aqua|gas":                                     "kind",
		"|solute":                                      "INCI name",
		"Aqua|water|||7732-18-6 m recalled":            "check digit",
		"Aqua|water|||7732-18-5":                       "NUMBER MARK SOURCE",
		"Aqua|water|||7732-18-5 m nobody1999":          "bibliography",
		"Aqua|water|||||1.0":                           "want VALUE",
		"Aqua|water|||||||no such curve":               "no isotherm",
		"Sucrose Laurate|other|||||||| 0.5 m recalled": "go together",
		"Sucrose Laurate|other|||||||||Sucrose":        "go together",
	} {
		if _, err := readSubstance(oneRow(t, head, row)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: got %v, want an error with %q", row, err, want)
		}
	}
}

func TestBadMaterialsAreRefused(t *testing.T) {
	const head = "code|name|form|grade|water|density|sits|size_um|role|classes|cautions|isotherm|dissolved|source|notes"
	for row, want := range map[string]string{
		"|Water|liquid|compiled":                       "code and a name",
		"W|Water|gas|compiled":                         "column form",
		"W|Water|liquid|compiled|||top":                "column sits",
		"W|Water|liquid|compiled|||||magic":            "column role",
		"W|Water|liquid|compiled|||||||bites":          "column cautions",
		"W|Water|liquid|compiled|||||||||maybe":        "column dissolved",
		"W|Water|liquid|certain":                       "evidence",
		"W|Water|liquid|compiled|100":                  "want VALUE",
		"W|Water|liquid|compiled||||||||no such curve": "no isotherm",
	} {
		if _, err := readMaterial(oneRow(t, head, row)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: got %v, want an error with %q", row, err, want)
		}
	}
}

func TestClassesAreListedAndUsed(t *testing.T) {
	listed, used := map[string]bool{}, map[string]bool{}
	for _, c := range Classes() {
		if listed[c.Name] || c.Meaning == "" {
			t.Errorf("class %q is listed twice or has no meaning", c.Name)
		}
		listed[c.Name] = true
	}
	use := func(where string, classes []string) {
		for _, c := range classes {
			used[c] = true
			if !listed[c] {
				t.Errorf("%s: class %q is not in the list", where, c)
			}
		}
	}
	for _, e := range Entries() {
		use(e.INCI, e.Classes)
	}
	for _, m := range Materials() {
		use(m.Code, m.Classes)
	}
	for _, p := range Pairs() {
		for _, side := range []string{p.A, p.B} {
			if side == strings.ToLower(side) {
				use(p.Key, []string{side})
			}
		}
	}
	for c := range listed {
		if !used[c] {
			t.Errorf("class %q is listed and nothing belongs to it", c)
		}
	}
}

func TestCASCheckDigits(t *testing.T) {
	// Water, glycerol and sucrose; then a digit off, two swapped, and no form.
	for s, want := range map[string]bool{
		"7732-18-5": true, "56-81-5": true, "57-50-1": true,
		"7732-18-6": false, "7723-18-5": false, "56-81": false, "": false, "56-8a-5": false, "5-81-5": false,
	} {
		if CASChecks(s) != want {
			t.Errorf("CASChecks(%q) = %v", s, !want)
		}
	}
	for _, e := range Entries() {
		if e.CAS != "" && !CASChecks(e.CAS) {
			t.Errorf("%s: %s", e.INCI, e.CAS)
		}
	}
}

// atomic are the IUPAC abridged standard atomic weights, the second keying of
// what the molar masses were computed from.
var atomic = map[string]float64{
	"H": 1.008, "C": 12.011, "N": 14.007, "O": 15.999, "Na": 22.990, "Cl": 35.45, "K": 39.098, "Ca": 40.078, "Ti": 47.867, "Fe": 55.845, "Zn": 65.38,
}

var element = regexp.MustCompile(`([A-Z][a-z]?)(\d*)`)

func molarMass(t *testing.T, formula string) float64 {
	t.Helper()
	sum, read := 0.0, 0
	for _, m := range element.FindAllStringSubmatch(formula, -1) {
		n := 1
		if m[2] != "" {
			n, _ = strconv.Atoi(m[2])
		}
		a, ok := atomic[m[1]]
		if !ok {
			t.Errorf("%s: no atomic weight for %s", formula, m[1])
		}
		sum += a * float64(n)
		read += len(m[0])
	}
	if read != len(formula) {
		t.Errorf("formula %q is not read to its end", formula)
	}
	return sum
}

func TestMolarMassesComeFromTheFormulas(t *testing.T) {
	if m := molarMass(t, "C3H8O3"); math.Abs(m-92.094) > 1e-9 {
		t.Fatalf("glycerol weighs %g", m)
	}
	n := 0
	for _, e := range Entries() {
		if (e.Formula == "") != (e.MolarMass == 0) {
			t.Errorf("%s: formula %q and molar mass %g go together", e.INCI, e.Formula, e.MolarMass)
		}
		if e.Formula == "" {
			continue
		}
		n++
		if m := molarMass(t, e.Formula); math.Abs(m-e.MolarMass) > 0.0011 {
			t.Errorf("%s: %s weighs %.3f, the table says %g", e.INCI, e.Formula, m, e.MolarMass)
		}
	}
	if n < 40 {
		t.Errorf("only %d molar masses", n)
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
	for _, e := range Entries() {
		check(e.INCI, "density", e.Density.Known(), e.Marks)
		check(e.INCI, "molar_mass", e.MolarMass > 0, e.Marks)
		check(e.INCI, "sugar_head", e.SugarHead > 0, e.Marks)
		check(e.INCI, "cas", e.CAS != "", e.Marks)
	}
	for _, m := range Materials() {
		check(m.Code, "density", m.Density.Known(), m.Marks)
		check(m.Code, "water", m.Water.Known(), m.Marks)
		check(m.Code, "size_um", m.Size.Known(), m.Marks)
	}
}

func TestDensitiesAreOfThisWorld(t *testing.T) {
	in := func(where string, d levigate.Range) {
		if d.Known() && (d.Low < 0.6 || d.High > 6) {
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

func TestEverySubstanceIsReached(t *testing.T) {
	reached := map[string]bool{}
	for _, inci := range alone {
		if _, ok := Substance(inci); !ok {
			t.Errorf("%s is not on file", inci)
		}
		reached[inci] = true
	}
	for _, m := range Materials() {
		for _, s := range append(slices.Clone(m.Declared), m.Dry...) {
			reached[s.INCI] = true
		}
	}
	for _, e := range Entries() {
		if !reached[e.INCI] {
			t.Errorf("%s: no raw material holds it", e.INCI)
		}
		if _, ok := Substance(e.HeadLike); e.HeadLike != "" && !ok {
			t.Errorf("%s: head like %s, which is not on file", e.INCI, e.HeadLike)
		}
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
