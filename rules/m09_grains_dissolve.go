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
	},
	Check: func(s *Subject, r *Report) {
		if s.Continuous != levigate.PolarContinuous {
			return
		}
		for i, m := range s.Materials() {
			if s.Sits(i) != levigate.Grain || !mostlySolute(m) || s.Formula.Lines[i].Percent.IsZero() {
				continue
			}
			g := s.Grams(i)
			gone := g - s.staysOf(i)
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
			Given: sheet(aqua("90"), line("10", "Sea salt, fine grains", of("Sodium Chloride", 100), kind(levigate.Solute), grains())),
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
			Given: sheet(aqua("0.5"), line("40", "Cane sugar, fine grains", of("Sucrose", 100), kind(levigate.Solute), grains()), stays("sucrose", 39, 1)),
			Shows: Under,
		},
		{Name: "sugar in oil", Given: sheet(oily(), oil("60", "Sunflower oil"), line("40", "Cane sugar", of("Sucrose", 100), kind(levigate.Solute), grains()))},
		{Name: "shell does not dissolve", Given: sheet(aqua("20"), line("7", "Walnut shell powder", of("Juglans Regia Shell Powder", 100), kind(levigate.Powder), grains()))},
	},
})

func mostlySolute(m *levigate.Material) bool {
	var percent float64
	for i := range m.Declared {
		if s := m.Declared[i].Substance; s != nil && s.Kind == levigate.Solute {
			percent += m.Declared[i].Percent.Typical
		}
	}
	return percent >= 50
}

// staysOf is what stays undissolved of a line, where it is the only one that
// brings the substance; of several each keeps its share.
func (s *Subject) staysOf(line int) float64 {
	var out float64
	for _, h := range s.Composition.Held {
		if h.Kind != levigate.Solute || !strings.HasSuffix(h.Name, undissolved) || !slices.Contains(h.From, line) {
			continue
		}
		var all float64
		for _, i := range h.From {
			all += s.Grams(i)
		}
		if all > 0 {
			out += h.Grams.Typical * s.Grams(line) / all
		}
	}
	return out
}
