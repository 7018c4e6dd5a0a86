package rules

import (
	"levigate"
	"levigate/cite"
)

// toWet is how many times its weight of a liquid that does not swell it a gum
// is stirred into.
const toWet = 5.0

var _ = register(Rule{
	ID:    "M08",
	Name:  "dry-gum",
	Title: "A gum, and too little polyol or oil to wet it first",
	Why: "Strewn into water a gum swells outside while it is dry inside: fish-eyes that no stirring takes out. " +
		"Stirred first into five to ten times its weight of glycerin, a glycol or oil, its grains lie apart before the water reaches them.",
	Since:    "0.1",
	Severity: levigate.Advice,
	After:    []string{"C02"},
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Compares: Exact,
	Messages: map[string]Message{
		"little": {
			Text: "{names}: {gum:2} g of gum, and {wets:2} g of polyol or oil to wet it in before the water; five times its weight is usual.",
			Help: "bring in a little glycerin or propanediol, or strew the gum very slowly into fast water through a sieve and let it rest overnight",
		},
	},
	Check: func(s *Subject, r *Report) {
		if !s.holds("gum") {
			return
		}
		var gum float64
		var lines []int
		for _, a := range amounts(s, "gum") {
			m := s.Formula.Lines[a.line].Match.Material
			if a.grams > 0 && m.Form != levigate.Liquid && m.Water.Typical < 50 {
				gum += a.grams
				lines = append(lines, a.line)
			}
		}
		if gum == 0 {
			return
		}
		p := s.poured()
		if p.water < gum {
			return // no water to swell it
		}
		wets := p.oil
		for _, a := range amounts(s, "polyol") {
			if m := s.Formula.Lines[a.line].Match.Material; m.Form == levigate.Liquid && m.Water.Typical < 20 {
				wets += a.grams
			}
		}
		const grain = 1e-9
		if wets < toWet*gum-grain {
			r.Broken(Note{Say: "little", At: atLines(lines), Args: Args{"names": s.Names(lines), "gum": gum, "wets": wets}})
		}
	},
	Examples: []Example{
		{Name: "a gel of water and gum", Given: sheet(aqua("98"), line("1", "Xanthan gum", of("Xanthan Gum", 100, "gum"), form(levigate.FinePow)), polyol("1", "Glycerin")), Want: "M08 advice: Xanthan gum: 1.00 g of gum, and 1.00 g of polyol or oil to wet it in before the water; five times its weight is usual.\n" +
			"  help: bring in a little glycerin or propanediol, or strew the gum very slowly into fast water through a sieve and let it rest overnight\n" +
			"  at: lines/1\n", Shows: Under},
		{Name: "five times its weight", Given: sheet(aqua("97.6"), line("0.4", "Xanthan gum", is("gum"), form(levigate.FinePow)), polyol("2", "Glycerin")), Shows: On},
		{Name: "a lotion", Given: sheet(aqua("80"), line("0.3", "Xanthan gum", is("gum"), form(levigate.FinePow)), polyol("5", "Glycerin"), oil("14", "Sunflower oil")), Shows: Over},
		{Name: "a gel of aloe comes swollen", Given: sheet(line("99", "Aloe leaf gel", of("Aqua", 98), of("Xanthan Gum", 0.6, "gum"), water(98), form(levigate.Liquid)))},
		{Name: "a dry mask", Given: sheet(dry(), line("99", "Kaolin"), line("1", "Xanthan gum", is("gum"), form(levigate.FinePow)))},
	},
})
