package library

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"levigate"
	"levigate/quantity"
	"levigate/refdata"
)

var (
	ours = &levigate.Material{
		Code: "OM-1", Name: "Grandmother's Rosé clay", Origin: levigate.OfFormula,
		Declared: []levigate.Share{{INCI: "Kaolin", Percent: levigate.Exactly(100)}},
	}
	shadow = &levigate.Material{
		Code: "OM-2", Name: "maize starch", Origin: levigate.OfFormula,
		Declared: []levigate.Share{{INCI: "Zea Mays Starch", Percent: levigate.Exactly(100)}},
	}
	shelved = &levigate.Material{
		Code: "WS-1", Name: "Maize starch", Origin: levigate.OfWorkspace,
		Declared: []levigate.Share{{INCI: "Corn Starch", Percent: levigate.Exactly(100)}},
	}
	confused = &levigate.Material{Code: "Honey, runny", Name: "Trial 7", Origin: levigate.OfFormula}
)

func TestFind(t *testing.T) {
	l := New(nil)
	for _, c := range []struct {
		asked, want string
		origin      levigate.Origin
	}{
		{"Glycerin", "Glycerin", levigate.Pure},
		{"  glycERIN ", "Glycerin", levigate.Pure},
		{"Glycerol", "Glycerin", levigate.Pure},
		{"Water", "Aqua", levigate.Pure},
		{"1,3-Propanediol", "Propanediol", levigate.Pure},
		{"Glycerin, vegetable, 99.5 %", "Glycerin, vegetable, 99.5 %", levigate.Embedded},
		{"glycerin vegetable 99.5%", "Glycerin, vegetable, 99.5 %", levigate.Embedded},
		{"gly-99", "Glycerin, vegetable, 99.5 %", levigate.Embedded},
		{"Walnut shell powder, 150-400 um", "Walnut shell powder, 150–400 µm", levigate.Embedded},
		{"Dimethicone, 350 mm2/s", "Dimethicone, 350 mm²/s", levigate.Embedded},
		{"Càstor Öil", "Castor oil", levigate.Embedded},
		{"Ca\u0300stor o\u0308il", "Castor oil", levigate.Embedded},
		{"sunflower oil refined", "Sunflower oil, refined", levigate.Embedded},
		// A mixture's name stands for its typical raw material.
		{"Mel", "Honey, runny", levigate.Embedded},
		{"Honey", "Honey, runny", levigate.Embedded},
		{"Aloe Barbadensis Leaf Juice", "Aloe leaf juice, one to one, unpreserved", levigate.Embedded},
		// A US label name that is also a raw material's plain name.
		{"Rice starch", "Rice starch", levigate.Embedded},
		{"Corn Starch", "Zea Mays Starch", levigate.Pure},
		{"Oryza Sativa Starch", "Oryza Sativa Starch", levigate.Pure},
	} {
		m := l.Find(c.asked, nil)
		if m.Material == nil || m.Material.Name != c.want || m.Material.Origin != c.origin || m.Nearest != nil {
			t.Errorf("%q: got %+v, want %s from %s", c.asked, m, c.want, c.origin)
		}
	}
}

func TestShelvesAreSearchedInOrder(t *testing.T) {
	l := New([]*levigate.Material{shelved})
	for _, c := range []struct {
		asked string
		own   []*levigate.Material
		want  levigate.Origin
	}{
		{"Maize starch", []*levigate.Material{ours, shadow}, levigate.OfFormula},
		{"Maize starch", []*levigate.Material{ours}, levigate.OfWorkspace},
		{"ws-1", []*levigate.Material{ours}, levigate.OfWorkspace},
		{"STA-MA", nil, levigate.Embedded},
		{"grandmother’s rose clay", []*levigate.Material{ours}, levigate.OfFormula},
		{"GRANDMOTHER'S ROSE\u0301 CLAY", []*levigate.Material{ours}, levigate.OfFormula},
		// A code comes before a name, even when it looks like one.
		{"Honey, runny", []*levigate.Material{{Name: "Honey, runny", Origin: levigate.Embedded}, confused}, levigate.OfFormula},
	} {
		m := l.Find(c.asked, c.own)
		if m.Material == nil || m.Material.Origin != c.want {
			t.Errorf("%q: got %+v, want one from %s", c.asked, m.Material, c.want)
		}
	}
	m := l.Find("Maize starch", nil).Material
	if m == shelved || m.Declared[0].Substance == nil || shelved.Declared[0].Substance != nil {
		t.Error("a workspace material is resolved on a copy")
	}
	if m := New(nil).Find("", []*levigate.Material{{Name: ""}}); m.Material != nil || m.Nearest != nil {
		t.Errorf("an empty name found %+v", m)
	}
}

func TestUnknownNamesTheNearest(t *testing.T) {
	l := New([]*levigate.Material{shelved})
	for asked, want := range map[string]string{
		"Glycerine 99.5 %":     "Glycerin, vegetable, 99.5 %",
		"kaolin white":         "Kaolin, fine white",
		"Sunflwoer oil":        "Sunflower oil, refined",
		"bentonit":             "Bentonite",
		"walnut":               "Walnut seed oil, cold-pressed",
		"Cornstarch":           "Corn Starch",
		"Grandmothers clay":    "Grandmother's Rosé clay",
		"Sucrose laurate":      "",
		"Sucrose laurat":       "Sucrose Laurate",
		"tocopherols 70":       "Mixed tocopherols 70 % in sunflower oil",
		"high oleic sunflower": "Sunflower oil, high-oleic, refined",
	} {
		m := l.Find(asked, []*levigate.Material{ours})
		if want == "" {
			continue // known: tested above
		}
		if m.Material != nil || len(m.Nearest) == 0 || m.Nearest[0] != want {
			t.Errorf("%q: got %q, want %q first", asked, m.Nearest, want)
		}
		if len(m.Nearest) > 3 {
			t.Errorf("%q: %d names", asked, len(m.Nearest))
		}
		for range 3 {
			if again := l.Find(asked, []*levigate.Material{ours}); !slices.Equal(again.Nearest, m.Nearest) {
				t.Errorf("%q: first %q, then %q", asked, m.Nearest, again.Nearest)
			}
		}
		for _, n := range m.Nearest {
			if l.Find(n, []*levigate.Material{ours}).Material == nil {
				t.Errorf("%q: suggests %q, which is not known either", asked, n)
			}
		}
	}
	// One name on two shelves is one suggestion.
	if m := l.Find("maize strach", nil); !slices.Equal(slices.Compact(slices.Clone(m.Nearest)), m.Nearest) || m.Nearest[0] != "Maize starch" {
		t.Errorf("got %q", m.Nearest)
	}
	if m := l.Find("xqzzy", nil); m.Material != nil || len(m.Nearest) != 0 {
		t.Errorf("noise found %+v", m)
	}
	if m := l.Find(strings.Repeat("long ", 100), nil); m.Material != nil {
		t.Errorf("a long name found %+v", m)
	}
}

func TestAloneMeansDryAndPure(t *testing.T) {
	l := New(nil)
	for _, e := range refdata.Entries() {
		m := l.Find(e.INCI, nil)
		if m.Material == nil {
			t.Errorf("%s is not found", e.INCI)
			continue
		}
		if e.Alone != "" {
			if m.Material.Code != e.Alone || m.Delivered != nil {
				t.Errorf("%s: got %+v", e.INCI, m)
			}
			continue
		}
		water := 0.0
		if e.Kind == levigate.Water {
			water = 100
		}
		d := m.Material.Declared
		if m.Material.Origin != levigate.Pure || m.Material.Water != levigate.Exactly(water) || len(d) != 1 ||
			d[0].Substance != e.Substance || d[0].Percent != levigate.Exactly(100) || m.Material.Density != e.Density {
			t.Errorf("%s: got %+v", e.INCI, m.Material)
		}
		if (m.Delivered != nil) != (e.Delivered != "") {
			t.Errorf("%s: delivered as %v", e.INCI, m.Delivered)
		}
	}
	for inci, code := range map[string]string{
		"Zea Mays Starch": "STA-MA", "Corn Starch": "STA-MA", "Bentonite": "BEN-NA", "Xanthan Gum": "XAN-80", "Sorbitol": "SOR-70",
		"Sodium Lactate": "SLA-60", "Kaolin": "KAO-WH", "Glycerin": "", "Sucrose": "", "Aqua": "", "Urea": "",
	} {
		d := l.Find(inci, nil).Delivered
		if (d == nil) != (code == "") || d != nil && d.Code != code {
			t.Errorf("%s is delivered as %v, want %q", inci, d, code)
		}
	}
	// What is known of the raw material goes with the bare name, where it fits.
	if m := l.Find("Juglans Regia Shell Powder", nil).Material; m.Sits != levigate.Grain || !m.Warns("dust") || !m.HasRole("scrub") {
		t.Errorf("walnut shell: %+v", m)
	}
	if m := l.Find("Sucrose", nil).Material; m.Sits != "" || m.HasRole("scrub") || m.Size.Known() {
		t.Errorf("sucrose by its bare name is no scrub: %+v", m)
	}
	if m := l.Find("Sodium Hydroxide", nil).Material; !m.Warns("caustic") || m.Form != levigate.Crystals {
		t.Errorf("sodium hydroxide: %+v", m)
	}
	if m, _ := refdata.Material("SUG-CA"); !m.HasRole("scrub") {
		t.Error("the sugar grains lost their role to the bare name")
	}
}

func TestSubstance(t *testing.T) {
	l := New(nil)
	for asked, want := range map[string]string{
		"Helianthus Annuus Seed Oil": "Helianthus Annuus Seed Oil", "sunflower seed oil": "Helianthus Annuus Seed Oil",
		"Rice Starch": "Oryza Sativa Starch", "WATER": "Aqua", "Béeswax": "Cera Alba", "": "", "Maize starch": "",
	} {
		s, ok := l.Substance(asked)
		if ok != (want != "") || ok && s.INCI != want {
			t.Errorf("%q: got %v %v, want %q", asked, s, ok, want)
		}
	}
}

func FuzzFind(f *testing.F) {
	f.Add("Glycerin")
	f.Add("Ca\u0300stor o\u0308il, 99 %")
	f.Add(strings.Repeat("é", 200))
	l := New([]*levigate.Material{shelved})
	f.Fuzz(func(t *testing.T, s string) {
		m := l.Find(s, []*levigate.Material{ours})
		if m.Material != nil && m.Nearest != nil || len(m.Nearest) > 3 {
			t.Errorf("%q: %+v", s, m)
		}
	})
}

var exampleLine = regexp.MustCompile(`^\s*- \{phase: \w+, material: "?(.*?)"?, (?:percent: ([\d.]+)|qs: true)\}`)

// What the filling line of each example comes to, by the page it was worked
// out on.
var fills = map[string]string{
	"HP-01": "47.5", "CM-03": "14.7", "BL-02": "66.59", "CB-01": "32", "NG-09": "62.8",
	"PL-04": "72.05", "HW-05": "59.2", "TS-06": "25", "TB-07": "35.4", "DM-08": "35.3", "FM-10": "40.5", "NO-11": "45.7",
}

// Every line of the example formulas is a raw material on file, and the
// percentages leave the filling line what it should be.
func TestExamples(t *testing.T) {
	files, err := filepath.Glob("../../examples/*.formula.yaml")
	if err != nil || len(files) < 5 {
		t.Fatalf("%d examples, %v", len(files), err)
	}
	l := New(nil)
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		sum, lines, qs := quantity.Decimal{}, 0, 0
		for _, line := range strings.Split(string(text), "\n") {
			m := exampleLine.FindStringSubmatch(line)
			if m == nil {
				continue
			}
			lines++
			if found := l.Find(m[1], nil); found.Material == nil || found.Material.Origin != levigate.Embedded {
				t.Errorf("%s: %q is not on file; nearest %q", file, m[1], found.Nearest)
			}
			if m[2] == "" {
				qs++
				continue
			}
			sum = sum.Add(quantity.MustDecimal(m[2]))
		}
		if lines != strings.Count(string(text), "- {phase:") || lines == 0 {
			t.Errorf("%s: %d lines read", file, lines)
		}
		code, _, _ := strings.Cut(filepath.Base(file), ".")
		if left := quantity.Hundred.Sub(sum); qs != 1 || left.String() != fills[code] {
			t.Errorf("%s: %d lines fill up, with %s; want one with %s", file, qs, left, fills[code])
		}
	}
}

func BenchmarkFind(b *testing.B) {
	l := New([]*levigate.Material{shelved})
	for _, name := range []string{"Glycerin", "GLY-99", "Sunflower oil, high-oleic, refined", "Walnut shell powder, 150–400 µm", "Maize starch", "sunflwoer oil"} {
		b.Run(strings.ReplaceAll(name, " ", "_"), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				l.Find(name, nil)
			}
		})
	}
	b.Run("own", func(b *testing.B) {
		own := make([]*levigate.Material, 10)
		for i := range own {
			own[i] = &levigate.Material{Code: fmt.Sprintf("OWN-%d", i), Name: fmt.Sprintf("Raw material of our own %d", i)}
		}
		b.ReportAllocs()
		for b.Loop() {
			l.Find("Sunflower oil, high-oleic, refined", own)
		}
	})
}
