package rules

import (
	"levigate"
	"levigate/cite"
)

// countFrom is the share from which a raw material's own microbes are asked
// for. A judgement of this project: below it a dirty lot is diluted two
// hundredfold.
const countFrom = 0.5 // %

// growsFrom is the water held from which a raw material is wet enough for
// microbes to grow in it while it stands, g per 100 g: hydrosols and juices, not
// honey or a moist clay. A judgement of this project.
const growsFrom = 50.0

var _ = register(Rule{
	ID:    "W04",
	Name:  "no-microbial-count",
	Title: "Natural powders, gums or honey without a microbial count",
	Why: "Clays, starches, ground shells, gums and honey carry microbes and their spores. Low water activity stops growth and does not kill: " +
		"what came in alive is still there when the product meets water. Nor is a preservative there to clean up a raw material.",
	Since:    "0.1",
	Severity: levigate.Warn,
	Sources:  []cite.Ref{{Key: "trade-practice"}, {Key: "handbook-preservation"}},
	Compares: Exact,
	Messages: map[string]Message{
		"one": {
			Text: "Nobody measured the microbes that {most:1 %} brings in. Dry is not clean: spores wait, and low water activity does not kill.",
			Help: "ask the supplier for the total count and for yeasts and moulds of this lot, or have it counted",
		},
		"many": {
			Text: "Nobody measured the microbes that {most:1 %} bring in. Dry is not clean: spores wait, and low water activity does not kill.",
			Help: "ask the supplier for the total count and for yeasts and moulds of each lot, or have them counted",
		},
		"wet-one": {
			Text: "Nobody measured the microbes that {most:1 %} brings in. Watery, it feeds them while it stands, and a preservative in the product does not clean it up.",
			Help: "ask the supplier for the total count and for yeasts and moulds of this lot, or have it counted; keep it cold and closed, and open little",
		},
		"wet-many": {
			Text: "Nobody measured the microbes that {most:1 %} bring in. Watery, they feed them while they stand, and a preservative in the product does not clean them up.",
			Help: "ask the supplier for the total count and for yeasts and moulds of each lot, or have them counted; keep them cold and closed, and open little",
		},
	},
	Check: func(s *Subject, r *Report) {
		// Dry ones wait, watery ones grow: each kind in its own words.
		for _, kind := range []struct {
			prefix string
			wet    bool
		}{{"", false}, {"wet-", true}} {
			var lines []int
			var most []Part
			for i, m := range s.Materials() {
				if g := natural(s, i, m); g >= countFrom && (m.Water.Typical >= growsFrom) == kind.wet {
					lines, most = append(lines, i), append(most, Part{s.Name(i), g})
				}
			}
			n := Note{Say: kind.prefix + "one", At: atLines(lines), Args: Args{"most": most}}
			if len(lines) > 1 {
				n.Say = kind.prefix + "many"
			}
			if len(lines) > 0 {
				r.Broken(n)
			}
		}
	},
	Examples: []Example{
		{
			Name: "clay, starch and shell",
			Given: sheet(line("8", "Kaolin, fine white", is("bioburden")), line("3", "Maize starch", of("Zea Mays Starch", 100, "starch", "bioburden")),
				line("7", "Walnut shell powder", is("bioburden")), line("47.5", "Sunflower oil")),
			Want: "W04 warn: Nobody measured the microbes that Kaolin, fine white (8.0 %), Maize starch (3.0 %) and Walnut shell powder (7.0 %) bring in. " +
				"Dry is not clean: spores wait, and low water activity does not kill.\n" +
				"  help: ask the supplier for the total count and for yeasts and moulds of each lot, or have them counted\n" +
				"  at: lines/0 lines/1 lines/2\n",
			Shows: Over,
		},
		{
			Name:  "half a per cent of gum",
			Given: sheet(line("0.5", "Xanthan gum", is("gum"))),
			Want: "W04 warn: Nobody measured the microbes that Xanthan gum (0.5 %) brings in. Dry is not clean: spores wait, and low water activity does not kill.\n" +
				"  help: ask the supplier for the total count and for yeasts and moulds of this lot, or have it counted\n" +
				"  at: lines/0\n",
			Shows: On,
		},
		{
			Name: "two hydrosols and a clay",
			Given: sheet(line("40", "Rose hydrosol", is("bioburden"), water(99.9)), line("15", "Witch hazel hydrosol", is("bioburden"), water(99.9)),
				line("5", "Kaolin", is("bioburden"), water(1))),
			Want: "W04 warn: Nobody measured the microbes that Kaolin (5.0 %) brings in. Dry is not clean: spores wait, and low water activity does not kill.\n" +
				"  help: ask the supplier for the total count and for yeasts and moulds of this lot, or have it counted\n" +
				"  at: lines/2\n" +
				"W04 warn: Nobody measured the microbes that Rose hydrosol (40.0 %) and Witch hazel hydrosol (15.0 %) bring in. " +
				"Watery, they feed them while they stand, and a preservative in the product does not clean them up.\n" +
				"  help: ask the supplier for the total count and for yeasts and moulds of each lot, or have them counted; keep them cold and closed, and open little\n" +
				"  at: lines/0 lines/1\n",
		},
		{
			Name:  "honey waits like a powder",
			Given: sheet(line("12", "Honey, runny", is("bioburden"), water(17.2))),
			Want: "W04 warn: Nobody measured the microbes that Honey, runny (12.0 %) brings in. Dry is not clean: spores wait, and low water activity does not kill.\n" +
				"  help: ask the supplier for the total count and for yeasts and moulds of this lot, or have it counted\n" +
				"  at: lines/0\n",
		},
		{
			Name:  "aloe juice without a preservative",
			Given: sheet(line("50", "Aloe leaf juice", is("bioburden"), water(99.5))),
			Want: "W04 warn: Nobody measured the microbes that Aloe leaf juice (50.0 %) brings in. Watery, it feeds them while it stands, and a preservative in the product does not clean it up.\n" +
				"  help: ask the supplier for the total count and for yeasts and moulds of this lot, or have it counted; keep it cold and closed, and open little\n" +
				"  at: lines/0\n",
		},
		{Name: "the gum of a lotion", Given: sheet(line("0.3", "Xanthan gum", is("gum"))), Shows: Under},
		{
			Name:  "a gel of which a hundredth is gum",
			Given: sheet(line("19", "Aloe leaf gel", of("Aqua", 98), of("Xanthan Gum", 0.6, "gum"), water(98))),
		},
		{Name: "a mineral pigment", Given: sheet(line("4", "Titanium dioxide"))},
	},
})

// natural is what a line brings of matter that carries microbes: the share
// declared, or the whole line where the raw material is such by itself.
func natural(s *Subject, line int, m *levigate.Material) float64 {
	var percent float64
	for i := range m.Declared {
		if sub := m.Declared[i].Substance; sub.Is("bioburden") || sub.Is("gum") {
			percent += m.Declared[i].Percent.Typical
		}
	}
	if percent == 0 && (m.Is("bioburden") || m.Is("gum")) {
		percent = 100
	}
	if percent == 0 {
		return 0
	}
	return s.Grams(line) * percent / 100
}
