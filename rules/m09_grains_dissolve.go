package rules

import (
	"slices"
	"strings"

	"levigate"
	"levigate/cite"
)

// A tenth of the grains gone is felt; all of them gone, nearly, is another
// product.
const (
	feltLoss = 0.1
	allGone  = 0.95
)

var _ = register(Rule{
	ID:    "M09",
	Name:  "grains-dissolve",
	Title: "Sugar or salt grains that dissolve in the product",
	Why: "Grains of sugar or salt rub as long as they are grains. Where the product holds water they dissolve until that water is full of them: " +
		"the edges go first, the grit fades over days, and on a cold night some of it comes back as coarse crystals.",
	Since:    "0.1",
	Severity: levigate.Advice,
	After:    []string{"C02"},
	Sources:  []cite.Ref{{Key: "levigate-judgement"}},
	Compares: Exact,
	Messages: map[string]Message{
		"some": {
			Text: "Of {grains:1} g of {name}, about {gone:1} g dissolve in the water of the product: the grit fades.",
			Help: "keep water out of a scrub of sugar or salt, saturate the water first, or take grains that do not dissolve",
		},
		"all": {
			Text: "{name}: all {grains:1} g dissolve in the water of the product, and no grit is left.",
			Help: "take grains that do not dissolve, or leave the water out",
		},
		"no-data": {
			Text:  "{name}: how much of {grains:1} g dissolves in the water of the product is not on file: cannot be told.",
			Help:  "shake it with the liquid of this formula, and look after a day whether grains are left",
			Needs: "what is left of {name} in the liquid of this formula after a day",
		},
	},
	Check: func(s *Subject, r *Report) {
		if s.Continuous != levigate.PolarContinuous {
			return
		}
		for i, m := range s.Materials() {
			if s.Sits(i) != levigate.Grain || !mostly(m, levigate.Solute) || s.Formula.Lines[i].Percent.IsZero() {
				continue
			}
			g := s.Grams(i)
			gone, told := s.goneOf(i, m)
			if !told {
				r.CannotTell(Note{Say: "no-data", At: []string{atLine(i)}, Args: Args{"name": s.Name(i), "grains": g}})
				continue
			}
			if gone < feltLoss*g*(1-1e-9) {
				continue
			}
			n := Note{Say: "some", At: []string{atLine(i)}, Args: Args{"name": s.Name(i), "grains": g, "gone": gone}}
			if gone >= allGone*g {
				n.Say = "all"
				delete(n.Args, "gone")
			}
			r.Broken(n)
		}
	},
	Examples: []Example{
		{
			Name: "a sugar scrub in a glycerin gel",
			Given: sheet(aqua("8"), polyol("20", "Glycerin"), oil("32", "Sunflower oil"),
				line("40", "Cane sugar, fine grains", of("Sucrose", 100), kind(levigate.Solute), grains()), stays("sucrose", 28, 3)),
			Want: "M09 advice: Of 40.0 g of Cane sugar, fine grains, about 12.0 g dissolve in the water of the product: the grit fades.\n" +
				"  help: keep water out of a scrub of sugar or salt, saturate the water first, or take grains that do not dissolve\n" +
				"  at: lines/3\n", Shows: Over,
		},
		{
			Name:  "a little salt in much water",
			Given: sheet(aqua("90"), line("10", "Sea salt, fine grains", of("Sodium Chloride", 100), kind(levigate.Solute), saturates(0.75), grains())),
			Want: "M09 advice: Sea salt, fine grains: all 10.0 g dissolve in the water of the product, and no grit is left.\n" +
				"  help: take grains that do not dissolve, or leave the water out\n" +
				"  at: lines/1\n",
		},
		{
			Name:  "a tenth of it",
			Given: sheet(aqua("2"), line("40", "Cane sugar, fine grains", of("Sucrose", 100), kind(levigate.Solute), grains()), stays("sucrose", 36, 1)),
			Want: "M09 advice: Of 40.0 g of Cane sugar, fine grains, about 4.0 g dissolve in the water of the product: the grit fades.\n" +
				"  help: keep water out of a scrub of sugar or salt, saturate the water first, or take grains that do not dissolve\n" +
				"  at: lines/1\n", Shows: On,
		},
		{
			Name:  "hardly any water",
			Given: sheet(aqua("0.5"), line("40", "Cane sugar, fine grains", of("Sucrose", 100), kind(levigate.Solute), grains()), stays("sucrose", 36.5, 1)),
			Shows: Under,
		},
		{
			Name: "honey brings a little of the same sugar dissolved",
			Given: sheet(line("30", "Honey", of("Mel", 100, "honey"), kind(levigate.Solute), form(levigate.Liquid), water(17)),
				line("45", "White sugar", of("Sucrose", 100), kind(levigate.Solute), grains()), stays("sucrose", 38.7, 0, 1)),
			Want: "M09 advice: Of 45.0 g of White sugar, about 6.3 g dissolve in the water of the product: the grit fades.\n" +
				"  help: keep water out of a scrub of sugar or salt, saturate the water first, or take grains that do not dissolve\n" +
				"  at: lines/1\n",
		},
		{
			Name:  "most of it gone is not yet all",
			Given: sheet(aqua("4"), line("10", "Cane sugar", of("Sucrose", 100), kind(levigate.Solute), grains()), stays("sucrose", 1.5, 1)),
			Want: "M09 advice: Of 10.0 g of Cane sugar, about 8.5 g dissolve in the water of the product: the grit fades.\n" +
				"  help: keep water out of a scrub of sugar or salt, saturate the water first, or take grains that do not dissolve\n" +
				"  at: lines/1\n",
		},
		{
			Name:  "a salt whose saturation nobody put on file, but its solubility",
			Given: sheet(aqua("6"), polyol("14", "Glycerin"), line("40", "Borax grains", of("Sodium Borate", 100), kind(levigate.Solute), grains(), dissolves("Aqua", 3), dissolves("Glycerin", 60))),
			Want: "M09 advice: Of 40.0 g of Borax grains, about 6.7 g dissolve in the water of the product: the grit fades.\n" +
				"  help: keep water out of a scrub of sugar or salt, saturate the water first, or take grains that do not dissolve\n" +
				"  at: lines/2\n",
		},
		{
			Name:  "a salt nothing is on file about",
			Given: sheet(aqua("20"), line("40", "Potash grains", of("Potassium Carbonate", 100), kind(levigate.Solute), grains())),
			Want: "M09 advice, cannot tell: Potash grains: how much of 40.0 g dissolves in the water of the product is not on file: cannot be told.\n" +
				"  help: shake it with the liquid of this formula, and look after a day whether grains are left\n" +
				"  needs: what is left of Potash grains in the liquid of this formula after a day\n" +
				"  at: lines/1\n",
		},
		{Name: "sugar in oil", Given: sheet(oily(), oil("60", "Sunflower oil"), line("40", "Cane sugar", of("Sucrose", 100), kind(levigate.Solute), grains()))},
		{Name: "shell does not dissolve", Given: sheet(aqua("20"), line("7", "Walnut shell powder", of("Juglans Regia Shell Powder", 100), kind(levigate.Powder), grains()))},
	},
})

// goneOf is what dissolves of a line of grains: as the water activity has it
// where the substance has a curve with a saturation, else from its solubility;
// false where neither is on file.
func (s *Subject) goneOf(line int, m *levigate.Material) (gone float64, told bool) {
	g := s.Grams(line)
	x := mainSolute(m)
	if x == nil || x.Isotherm != nil && x.Isotherm.Saturation > 0 || s.staysOf(line) > 0 {
		return g - s.staysOf(line), true
	}
	liquid := s.polarLiquid()
	low, high, _ := capacity(x, liquid)
	if high == 0 {
		return 0, false
	}
	return min(g, (low+high)/2*grams(liquid)/100), true
}

// mainSolute is the solute that most of a raw material is.
func mainSolute(m *levigate.Material) *levigate.Substance {
	var most *levigate.Substance
	percent := 0.0
	for i := range m.Declared {
		if d := &m.Declared[i]; d.Substance != nil && d.Substance.Kind == levigate.Solute && d.Percent.Typical > percent {
			most, percent = d.Substance, d.Percent.Typical
		}
	}
	return most
}

// staysOf is what stays undissolved of a line. Of several that bring the
// substance dry each keeps its share; what honey or a syrup brings came
// dissolved, and the crystals are not of it.
func (s *Subject) staysOf(line int) float64 {
	var out float64
	for _, h := range s.Composition.Held {
		if h.Kind != levigate.Solute || !strings.HasSuffix(h.Name, undissolved) || !slices.Contains(h.From, line) {
			continue
		}
		var all, dry float64
		for _, i := range h.From {
			all += s.Grams(i)
			if !s.cameDissolved(i) {
				dry += s.Grams(i)
			}
		}
		switch {
		case dry > 0 && !s.cameDissolved(line):
			out += h.Grams.Typical * s.Grams(line) / dry
		case dry == 0 && all > 0:
			out += h.Grams.Typical * s.Grams(line) / all
		}
	}
	return out
}

// cameDissolved reports whether a line's raw material is delivered as a
// solution: a syrup, a juice, honey.
func (s *Subject) cameDissolved(line int) bool {
	m := s.Formula.Lines[line].Match.Material
	return m != nil && (m.Form == levigate.Liquid || m.Dissolved)
}

// saturates gives the substances declared so far a curve with a saturation.
func saturates(activity float64) trait {
	return each(func(x *levigate.Substance) { x.Isotherm = &levigate.Isotherm{Saturation: activity} })
}
