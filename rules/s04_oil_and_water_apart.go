package rules

import (
	"levigate"
	"levigate/cite"
)

// worthEmulsifying is the amount of each liquid from which they part visibly,
// % w/w.
const worthEmulsifying = 1.0

var _ = register(Rule{
	ID:    "S04",
	Name:  "oil-and-water-apart",
	Title: "Oil beside water or polyol, and no emulsifier",
	Why: "Stirred or shaken together they part within minutes to days. A product that parts is dosed unevenly: first one liquid, then the other. " +
		"It may be meant so, and then it says \"shake before use\".",
	Since:    "0.1",
	Severity: levigate.Advice,
	After:    []string{"C02", "W09", "W05"},
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Compares: Exact,
	Messages: map[string]Message{
		"apart": {
			Text: "{oil:1} g of oil beside {polar:1} g of polar liquid, and nothing that would hold them together: they part.",
			Help: "an emulsifier of a fifth to a quarter of the oil, or the range its supplier gives; or write \"shake before use\" on the pack",
		},
	},
	Check: func(s *Subject, r *Report) {
		oils := s.declared(levigate.Oil)
		p := s.poured()
		if oils >= worthEmulsifying && p.polarGrams() >= worthEmulsifying && !s.mayEmulsify() {
			r.Broken(Note{Say: "apart", At: atLines(p.polar), Args: Args{"oil": oils, "polar": p.polarGrams()}})
		}
	},
	Examples: []Example{
		{Name: "oil and glycerin", Given: sheet(oil("30", "Sunflower oil"), polyol("60", "Glycerin"), aqua("10")), Want: "S04 advice: 30.0 g of oil beside 70.0 g of polar liquid, and nothing that would hold them together: they part.\n" +
			"  help: an emulsifier of a fifth to a quarter of the oil, or the range its supplier gives; or write \"shake before use\" on the pack\n" +
			"  at: lines/1 lines/2\n", Shows: Over},
		{Name: "one gram of oil", Given: sheet(oil("1", "Rosehip oil"), polyol("99", "Glycerin")), Want: "S04 advice: 1.0 g of oil beside 99.0 g of polar liquid, and nothing that would hold them together: they part.\n" +
			"  help: an emulsifier of a fifth to a quarter of the oil, or the range its supplier gives; or write \"shake before use\" on the pack\n" +
			"  at: lines/1\n", Shows: On},
		{Name: "a scented toner", Given: sheet(oil("0.3", "Lavender oil"), aqua("99.7")), Shows: Under},
		{Name: "a sugar scrub: grains are no liquid", Given: sheet(oily(), oil("40", "Sunflower oil"), line("60", "Cane sugar", of("Sucrose", 100), kind(levigate.Solute), grains(), form(levigate.Grains)))},
		{Name: "a substance nobody knows may hold them", Given: sheet(oil("30", "Sunflower oil"), aqua("67"), line("3", "Lecithin", declares(&levigate.Substance{INCI: "Lecithin", Kind: levigate.Other}, levigate.Exactly(100))))},
		{
			Name:  "said already of water alone in oil",
			Given: sheet(oil("95", "Sunflower oil"), aqua("5")),
			Want: "W09 warn: Purified water: 5.0 g of water stand alone in 95.0 g of oil: nothing is dissolved in it and no emulsifier keeps its drops apart. Each has an activity of 1.\n" +
				"  help: leave the water out, or bring it in with four times its weight of a polyol and an emulsifier\n" +
				"  at: lines/1\n",
		},
	},
})
