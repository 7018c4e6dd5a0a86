package rules

import (
	"slices"

	"levigate"
	"levigate/cite"
)

// Hidden water is spoken of when it is worth a note: a tenth of a gram, and a
// fifth of all there is. A lotion's trace in the glycerin is not.
const (
	hiddenWorthSaying = 0.1 // g per 100 g
	hiddenShare       = 0.2 // of all water
	mostNamed         = 3   // contributors named in the text
	wetAnyway         = 20  // written water from which a little more is no news, g per 100 g
)

var _ = register(Rule{
	ID:    "C03",
	Name:  "water-not-written",
	Title: "Raw materials bring water that the sheet does not call water",
	Why: "Starch, clay, honey, gums and diluted polyols are weighed dry in the mind and wet on the balance. " +
		"In a product that lives by its low water activity, this water is often more than what was added on purpose. " +
		"It is not declared as Aqua where it is natural to the material, but it counts for activity.",
	Since:    "0.1",
	Severity: levigate.Advice,
	After:    []string{"C02"},
	Sources:  []cite.Ref{{Key: "levigate-judgement"}},
	Compares: Exact,
	Messages: map[string]Message{
		"one": {
			Text: "You wrote {written:2} g of water; 100 g hold {held:2} g. {most:2 g} brings water that the sheet does not call water.",
			Help: "count with {held:2} g, or dry the material and enter a reading of its water",
		},
		"one-liquid": {
			Text: "You wrote {written:2} g of water; 100 g hold {held:2} g. {most:2 g} brings water that the sheet does not call water.",
			Help: "count with {held:2} g; a reading of the material's water makes it sharper",
		},
		"many-liquid": {
			Text: "You wrote {written:2} g of water; 100 g hold {held:2} g. {n} lines bring {hidden:2} g that the sheet does not call water, most of it {most:2 g}.",
			Help: "count with {held:2} g; a reading of the largest one's water makes it sharper",
		},
		"many": {
			Text: "You wrote {written:2} g of water; 100 g hold {held:2} g. {n} lines bring {hidden:2} g that the sheet does not call water, most of it {most:2 g}.",
			Help: "count with {held:2} g, or dry the largest of these and enter a reading of its water",
		},
	},
	Check: func(s *Subject, r *Report) {
		held := s.Water()
		var written float64
		n := 0
		for i, m := range s.Materials() {
			switch {
			case isPlainWater(m):
				written += s.Grams(i)
			case s.inCrystals(m):
				held -= s.Grams(i) * m.Water.Typical / 100
			case m.Water.Typical > 0:
				n++
			}
		}
		hidden := held - written
		if n == 0 || hidden < hiddenWorthSaying || hidden < hiddenShare*held {
			return
		}
		if written >= wetAnyway && !s.Formula.Claimed("low-water") {
			return // a lotion, a wash, a toner: nobody takes it for dry
		}
		parts, lines := contributors(s)
		args := Args{"written": written, "held": held, "most": parts[:min(mostNamed, len(parts))]}
		say := "one"
		if n > 1 {
			say = "many"
			args["n"], args["hidden"] = n, hidden
		}
		if !dries(s.Formula.Lines[lines[0]].Match.Material) {
			say += "-liquid"
		}
		r.Broken(Note{Say: say, At: atLines(lines[:min(mostNamed, len(lines))]), Args: args})
	},
	Examples: []Example{
		{
			Name: "powders in a gel",
			Given: sheet(aqua("2"), line("21", "Glycerin", water(0.5)), line("8", "Kaolin", water(1)), line("3", "Maize starch", water(12)),
				line("7", "Walnut shell powder", water(8)), line("59", "Sunflower oil", water(0.05))),
			Want: "C03 advice: You wrote 2.00 g of water; 100 g hold 3.13 g. 5 lines bring 1.13 g that the sheet does not call water, " +
				"most of it Walnut shell powder (0.56 g), Maize starch (0.36 g) and Glycerin (0.10 g).\n" +
				"  help: count with 3.13 g, or dry the largest of these and enter a reading of its water\n" +
				"  at: lines/4 lines/3 lines/1\n",
			Shows: Over,
		},
		{
			Name:  "honey and nothing else",
			Given: sheet(line("12", "Honey, runny", water(17.5)), line("88", "Glycerin")),
			Want: "C03 advice: You wrote 0.00 g of water; 100 g hold 2.10 g. Honey, runny (2.10 g) brings water that the sheet does not call water.\n" +
				"  help: count with 2.10 g, or dry the material and enter a reading of its water\n" +
				"  at: lines/0\n",
		},
		{
			Name:  "a tenth of a gram, to the last digit",
			Given: sheet(line("1", "Xanthan gum", water(10)), line("99", "Glycerin")),
			Want: "C03 advice: You wrote 0.00 g of water; 100 g hold 0.10 g. Xanthan gum (0.10 g) brings water that the sheet does not call water.\n" +
				"  help: count with 0.10 g, or dry the material and enter a reading of its water\n" +
				"  at: lines/0\n",
			Shows: On,
		},
		{
			Name: "the water of Epsom salt stays in its crystals while nothing pours over them",
			Given: sheet(oily(), oil("44", "Safflower oil"), line("55", "Epsom salt", of("Magnesium Sulfate", 100), kind(levigate.Solute), form(levigate.Crystals), water(51)),
				line("1", "Starch", water(12))),
			Want: "C03 advice: You wrote 0.00 g of water; 100 g hold 0.12 g. Starch (0.12 g) brings water that the sheet does not call water.\n" +
				"  help: count with 0.12 g, or dry the material and enter a reading of its water\n" +
				"  at: lines/2\n",
		},
		{Name: "a trace in the glycerin of a lotion", Given: sheet(aqua("67"), line("33", "Glycerin", water(0.5))), Shows: Under},
		{
			Name:  "a hydrosol cannot be dried",
			Given: sheet(line("40", "Rose hydrosol, distilled", water(99.9), form(levigate.Liquid)), polyol("60", "Glycerin")),
			Want: "C03 advice: You wrote 0.00 g of water; 100 g hold 39.96 g. Rose hydrosol, distilled (39.96 g) brings water that the sheet does not call water.\n" +
				"  help: count with 39.96 g; a reading of the material's water makes it sharper\n" +
				"  at: lines/0\n",
		},
		{
			Name: "nor can a cleanser or Epsom salt",
			Given: sheet(polyol("59", "Glycerin"), line("34", "Betaine, 30 % in water", water(63.5), form(levigate.Liquid)),
				line("7", "Magnesium sulfate, heptahydrate", water(51.1), form(levigate.Crystals))),
			Want: "C03 advice: You wrote 0.00 g of water; 100 g hold 25.17 g. 2 lines bring 25.17 g that the sheet does not call water, " +
				"most of it Betaine, 30 % in water (21.59 g) and Magnesium sulfate, heptahydrate (3.58 g).\n" +
				"  help: count with 25.17 g; a reading of the largest one's water makes it sharper\n" +
				"  at: lines/1 lines/2\n",
		},
		{Name: "a toner of water and hydrosol", Given: sheet(aqua("60"), line("40", "Rose hydrosol, distilled", water(99.9), form(levigate.Liquid)))},
		{
			Name:  "the same, said to be low in water",
			Given: sheet(claim("low-water"), aqua("60"), line("40", "Rose hydrosol, distilled", water(99.9), form(levigate.Liquid))),
			Want: "C03 advice: You wrote 60.00 g of water; 100 g hold 99.96 g. Rose hydrosol, distilled (39.96 g) brings water that the sheet does not call water.\n" +
				"  help: count with 99.96 g; a reading of the material's water makes it sharper\n" +
				"  at: lines/1\n",
		},
		{Name: "a balm", Given: sheet(oily(), line("100", "Sunflower oil", water(0.05)))},
		{
			Name:  "quiet while a line is not opened",
			Given: sheet(line("12", "Honey, runny", water(17.5)), unknown("88", "Gylcerin")),
			Want: "C02 warn: Gylcerin (88.00 %) could not be opened: no raw material of that name is known.\n" +
				"  help: write an INCI name, or describe the raw material under materials\n" +
				"  at: lines/1\n",
		},
	},
})

// dries reports whether a raw material can be dried at the bench. A solution
// cannot, and crystals hold their water built in.
func dries(m *levigate.Material) bool {
	return m.Form != levigate.Liquid && m.Form != levigate.Crystals
}

// builtIn is the water above which crystals have it built in, % of the raw
// material: nobody ships salt that damp.
const builtIn = 4.0

// inCrystals reports whether a raw material's water is that of its crystals and
// stays there: nothing pours here that could dissolve them.
func (s *Subject) inCrystals(m *levigate.Material) bool {
	return s.Continuous != levigate.PolarContinuous && m.Water.Typical >= builtIn && (m.Form == levigate.Crystals || m.Form == levigate.Grains) && mostly(m, levigate.Solute)
}

// isPlainWater reports whether a raw material is water and written as such.
func isPlainWater(m *levigate.Material) bool {
	for _, s := range m.Declared {
		if !s.IsWater() {
			return false
		}
	}
	return len(m.Declared) > 0
}

// contributors lists what brings hidden water, most first, with the lines.
func contributors(s *Subject) (parts []Part, lines []int) {
	for i, m := range s.Materials() {
		if m.Water.Typical > 0 && !isPlainWater(m) && !s.inCrystals(m) {
			lines = append(lines, i)
		}
	}
	brings := func(i int) float64 { return s.Grams(i) * s.Formula.Lines[i].Match.Material.Water.Typical / 100 }
	slices.SortStableFunc(lines, func(a, b int) int {
		switch x, y := brings(a), brings(b); {
		case x > y:
			return -1
		case x < y:
			return 1
		}
		return 0
	})
	for _, i := range lines {
		parts = append(parts, Part{s.Name(i), brings(i)})
	}
	return parts, lines
}
