package rules

import (
	"levigate"
	"levigate/cite"
)

// Water alone in oil: the oil is at least half, and less than a twentieth of the
// water's weight is dissolved in it.
const (
	oilRich      = 50.0 // g per 100 g
	leastSolute  = 0.05 // of the water
	waterWorthIt = 0.5  // g per 100 g
)

var _ = register(Rule{
	ID:    "W09",
	Name:  "water-alone-in-oil",
	Title: "Water stands alone in the oil",
	Why: "Five grams of water in twenty of glycerin have an activity near 0.46; the same five grams stirred into an oil have an activity of 1, " +
		"whatever the percentage says. Nothing is dissolved in these drops that would hold their water, and nothing keeps them from running together.",
	Since:    "0.1",
	Severity: levigate.Warn,
	After:    []string{"C02", "W05"},
	Sources:  []cite.Ref{{Key: "oil-water-anchors"}, {Key: "levigate-judgement"}},
	Compares: Exact,
	Messages: map[string]Message{
		"alone": {
			Text: "{names}: {water:1} g of water stand alone in {oil:1} g of oil: nothing is dissolved in it and no emulsifier keeps its drops apart. Each has an activity of 1.",
			Help: "leave the water out, or bring it in with four times its weight of a polyol and an emulsifier",
		},
	},
	Check: func(s *Subject, r *Report) {
		p, oils := s.poured(), s.declared(levigate.Oil)
		if p.water >= waterWorthIt && oils >= oilRich && p.solute < leastSolute*p.water && !s.mayEmulsify() {
			r.Broken(Note{Say: "alone", At: atLines(p.wet), Args: Args{"names": s.Names(p.wet), "water": p.water, "oil": oils}})
		}
	},
	Examples: []Example{
		{Name: "five per cent of water in an oil", Given: sheet(oil("95", "Sunflower oil"), aqua("5")), Want: "W09 warn: Purified water: 5.0 g of water stand alone in 95.0 g of oil: nothing is dissolved in it and no emulsifier keeps its drops apart. Each has an activity of 1.\n" +
			"  help: leave the water out, or bring it in with four times its weight of a polyol and an emulsifier\n" +
			"  at: lines/1\n", Shows: Over},
		{Name: "half a gram, to the last digit", Given: sheet(oil("99.5", "Sunflower oil"), aqua("0.5")), Want: "W09 warn: Purified water: 0.5 g of water stand alone in 99.5 g of oil: nothing is dissolved in it and no emulsifier keeps its drops apart. Each has an activity of 1.\n" +
			"  help: leave the water out, or bring it in with four times its weight of a polyol and an emulsifier\n" +
			"  at: lines/1\n", Shows: On},
		{
			Name:  "a hydrosol is water",
			Given: sheet(oil("97", "Sunflower oil"), line("3", "Rose water", of("Rosa Damascena Flower Water", 100, "hydrosol"), water(99.9), form(levigate.Liquid))),
			Want: "W09 warn: Rose water: 3.0 g of water stand alone in 97.0 g of oil: nothing is dissolved in it and no emulsifier keeps its drops apart. Each has an activity of 1.\n" +
				"  help: leave the water out, or bring it in with four times its weight of a polyol and an emulsifier\n" +
				"  at: lines/1\n",
		},
		{
			Name:  "less than a tenth of something may be nothing",
			Given: sheet(oil("95", "Sunflower oil"), aqua("4.9"), line("0.09", "Reed wax", of("Reed Wax", 100))),
			Want: "W09 warn: Purified water: 4.9 g of water stand alone in 95.0 g of oil: nothing is dissolved in it and no emulsifier keeps its drops apart. Each has an activity of 1.\n" +
				"  help: leave the water out, or bring it in with four times its weight of a polyol and an emulsifier\n" +
				"  at: lines/1\n",
		},
		{Name: "a tenth of it may hold the drops", Given: sheet(oil("95", "Sunflower oil"), aqua("4.9"), line("0.1", "Reed wax", of("Reed Wax", 100)))},
		{
			Name:  "a paste that is half water is poured, whatever form is on file",
			Given: sheet(oil("97", "Sunflower oil"), line("3", "Clay paste", of("Kaolin", 50), kind(levigate.Powder), of("Aqua", 50), water(50), form(levigate.Solid))),
			Want: "W09 warn: Clay paste: 1.5 g of water stand alone in 97.0 g of oil: nothing is dissolved in it and no emulsifier keeps its drops apart. Each has an activity of 1.\n" +
				"  help: leave the water out, or bring it in with four times its weight of a polyol and an emulsifier\n" +
				"  at: lines/1\n",
		},
		{Name: "a damp powder is not", Given: sheet(oil("97", "Sunflower oil"), line("3", "Damp clay", of("Kaolin", 51), kind(levigate.Powder), of("Aqua", 49), water(49), form(levigate.FinePow)))},
		{Name: "a trace", Given: sheet(oil("99.6", "Sunflower oil"), aqua("0.4")), Shows: Under},
		{Name: "water in a polyol", Given: sheet(oil("75", "Sunflower oil"), polyol("20", "Glycerin"), aqua("5"))},
		{Name: "an emulsion of water in oil", Given: sheet(oil("70", "Sunflower oil"), aqua("25"), emulsifier("5", "Polyglyceryl-3 diisostearate"))},
		{
			Name:  "said already of an oil that holds more than it dissolves",
			Given: sheet(oily(), oil("98", "Sunflower oil"), aqua("2"), figure("water.oil-room", -1.8, -1.9, -1.7), figure("water.oil-dissolved", 0.2, 0.1, 0.3), figure("water.oil-capacity", 0.2, 0.1, 0.3)),
			Want: "W05 warn: Oil surrounds everything and holds 1.8 (1.7–1.9) g more water per 100 g than the oils dissolve (0.20 (0.10–0.30) g of 0.20 (0.10–0.30) g): free drops at activity 1 are to be expected.\n" +
				"  help: dry the powders and waxes, or leave out what brings the water\n" +
				"  at: figures/water.oil-room\n",
		},
	},
})
