package assess

import (
	"math"
	"strconv"
	"testing"

	"levigate"
	"levigate/formulafile"
	"levigate/internal/library"
)

// check reads a formula as a maker writes it and checks it.
func check(t *testing.T, text string) *levigate.Assessment {
	t.Helper()
	lib := library.New(nil)
	f, problems := formulafile.Read("test", []byte("levigate: formula/1\ncode: T\nname: T\nproduct: hand-wash\n"+text))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if p := f.Resolve(lib); len(p) > 0 {
		t.Fatal(p)
	}
	return Check(Request{Formula: f, Library: lib, Conditions: levigate.Conditions{Temperature: 25}, Working: true, Curves: true})
}

func value(t *testing.T, a *levigate.Assessment, id string) float64 {
	t.Helper()
	f := a.Figures.Get(id)
	if f == nil {
		t.Fatalf("no figure %s", id)
	}
	return f.Value
}

// A raw material of the file's own that declares water holds it, whether the
// file says so again or not, and takes its density from its parts.
func TestOwnMaterialHoldsWhatItDeclares(t *testing.T) {
	own := check(t, `
lines:
  - {phase: A, material: House syrup, percent: 40}
  - {phase: B, material: "Sunflower oil, high-oleic, refined", percent: 60}
materials:
  - name: House syrup
    composition: [{inci: Glycerin, percent: 80}, {inci: Aqua, percent: 20}]
`)
	lines := check(t, `
lines:
  - {phase: A, material: Glycerin, percent: 32}
  - {phase: A, material: Aqua, percent: 8}
  - {phase: B, material: "Sunflower oil, high-oleic, refined", percent: 60}
`)
	for _, id := range []string{"water.total", "water.activity", "water.reserve", "structure.density"} {
		if a, b := value(t, own, id), value(t, lines, id); math.Abs(a-b) > 1e-9 {
			t.Errorf("%s: %g as one raw material, %g as its parts", id, a, b)
		}
	}
}

// Glycerol on two lines is glycerol on one.
func TestSplitLineChangesNothing(t *testing.T) {
	const oil = `  - {phase: B, material: "Sunflower oil, high-oleic, refined", qs: true}` + "\n"
	one := check(t, "lines:\n  - {phase: A, material: Glycerin, percent: 30}\n  - {phase: A, material: Aqua, percent: 5}\n"+oil)
	two := check(t, "lines:\n  - {phase: A, material: Glycerin, percent: 11}\n  - {phase: A, material: Aqua, percent: 5}\n  - {phase: C, material: Glycerin, percent: 19}\n"+oil)
	if a, b := value(t, one, "water.activity"), value(t, two, "water.activity"); math.Abs(a-b) > 1e-9 {
		t.Errorf("%.12f on one line, %.12f on two", a, b)
	}
}

// An isotherm given in the file is used, with a band even where none was given.
func TestOwnIsotherm(t *testing.T) {
	text := func(isotherm string) string {
		return `
lines:
  - {phase: A, material: Glycerin, percent: 40}
  - {phase: A, material: Aqua, percent: 10}
  - {phase: C, material: Husk, percent: 50}
materials:
  - name: Husk
    density: 1.4 g/mL
    composition: [{inci: Husk Powder, percent: 100}]
    water: {percent: 8}
    sits: grain
` + isotherm
	}
	none := check(t, text(""))
	gab := check(t, text("    isotherm: {gab: [0.05, 12, 0.78]}\n"))
	like := check(t, text("    isotherm: {like: maize starch}\n"))
	named := check(t, text("    isotherm: {like: \"Walnut shell powder, 150–400 µm\"}\n"))
	free := value(t, none, "water.activity")
	for name, a := range map[string]*levigate.Assessment{"gab": gab, "like a row": like, "like a raw material": named} {
		f := a.Figures.Get("water.activity")
		if !(f.Value < free) {
			t.Errorf("%s: activity %.3f is not below %.3f without an isotherm", name, f.Value, free)
		}
		banded := false
		for _, m := range f.Moves {
			banded = banded || m.Cause.Key == "substance/Husk/isotherm" || m.Cause.Key == "substance/maize starch/isotherm" || m.Cause.Key == "substance/walnut shell/isotherm"
		}
		if !banded {
			t.Errorf("%s: its isotherm is no cause of the band", name)
		}
	}
}

// What is typed is never NaN: every figure of odd formulas is finite.
func TestOddFormulasStayFinite(t *testing.T) {
	for name, text := range map[string]string{
		"nothing dissolves": "lines:\n  - {material: Kaolin, percent: 100}\n",
		"only water":        "lines:\n  - {material: Aqua, percent: 100}\n",
		"dry glycerin":      "lines:\n  - {material: Glycerin, percent: 100}\n",
		"all zero":          "lines:\n  - {material: Glycerin, percent: 0}\n  - {material: Aqua, percent: 0}\n",
		"salt and a drop":   "lines:\n  - {material: Sodium Chloride, percent: 99.99}\n  - {material: Aqua, percent: 0.01}\n",
		"two crystals":      "lines:\n  - {material: Sucrose, percent: 60}\n  - {material: Sodium Chloride, percent: 39}\n  - {material: Aqua, percent: 1}\n",
		"only preservative": "lines:\n  - {material: Potassium Sorbate, percent: 50}\n  - {material: Aqua, percent: 50}\n",
		"over":              "lines:\n  - {material: Glycerin, percent: 300}\n  - {material: Aqua, qs: true}\n",
	} {
		a := check(t, text)
		for _, f := range a.Figures {
			for _, v := range []float64{f.Value, f.Low, f.High} {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Errorf("%s: %s is %g (%g–%g)", name, f.ID, f.Value, f.Low, f.High)
				}
			}
			if !(f.Low <= f.Value && f.Value <= f.High) {
				t.Errorf("%s: %s %g lies outside its band %g–%g", name, f.ID, f.Value, f.Low, f.High)
			}
		}
		for _, c := range a.Curves {
			for i := range c.Y.Values {
				if v := c.Y.Values[i]; math.IsNaN(v) || math.IsInf(v, 0) || c.Low[i] > v+1e-12 || c.High[i] < v-1e-12 {
					t.Errorf("%s: %s at %g is %g (%g–%g)", name, c.ID, c.X.Values[i], v, c.Low[i], c.High[i])
					break
				}
			}
		}
	}
}

// Water raises the activity, never lowers it.
func TestActivityRisesWithWater(t *testing.T) {
	last := 0.0
	for water := 1; water <= 60; water += 3 {
		a := check(t, "lines:\n  - {material: Glycerin, percent: 25}\n  - {material: Sodium Chloride, percent: 2}\n  - {material: Urea, percent: 5}\n  - {material: Zea Mays Starch, percent: 5}\n  - {material: Aqua, percent: "+
			strconv.Itoa(water)+"}\n  - {material: \"Sunflower oil, high-oleic, refined\", qs: true}\n")
		v := value(t, a, "water.activity")
		if v < last {
			t.Errorf("%d g of water: activity falls from %.6f to %.6f", water, last, v)
		}
		last = v
	}
}

// Crystal water counts as water once dissolved and not before.
func TestCrystalWaterWaits(t *testing.T) {
	text := func(water string) string {
		return "lines:\n  - {material: \"Glucose, monohydrate crystals\", percent: 22}\n  - {material: Aqua, percent: " + water +
			"}\n  - {material: \"Sunflower oil, high-oleic, refined\", qs: true}\n"
	}
	wet := check(t, text("40"))
	same := check(t, "lines:\n  - {material: Glucose, percent: 19.998}\n  - {material: Aqua, percent: 42.002}\n  - {material: \"Sunflower oil, high-oleic, refined\", qs: true}\n")
	if a, b := value(t, wet, "water.activity"), value(t, same, "water.activity"); math.Abs(a-b) > 1e-6 {
		t.Errorf("dissolved: %.7f as hydrate, %.7f as anhydrous glucose with its water", a, b)
	}
}

// One raw material on two lines is one lot: its band is that of one line.
func TestOneLotOnTwoLines(t *testing.T) {
	const own = `
materials:
  - {name: House syrup, composition: [{inci: Glycerin, percent: 80}, {inci: Aqua, percent: 20}], water: {percent: 20, low: 15, high: 26}}
`
	one := check(t, "lines:\n  - {material: House syrup, percent: 40}\n  - {material: \"Sunflower oil, high-oleic, refined\", qs: true}"+own)
	two := check(t, "lines:\n  - {material: House syrup, percent: 15}\n  - {material: House syrup, percent: 25}\n  - {material: \"Sunflower oil, high-oleic, refined\", qs: true}"+own)
	for _, id := range []string{"water.total", "water.activity", "water.reserve"} {
		a, b := one.Figures.Get(id), two.Figures.Get(id)
		if math.Abs(a.Low-b.Low) > 1e-9 || math.Abs(a.High-b.High) > 1e-9 {
			t.Errorf("%s: %g–%g on one line, %g–%g on two", id, a.Low, a.High, b.Low, b.High)
		}
	}
}
