package rules

import (
	"levigate"
	"levigate/cite"
)

// usualShare and littleShare are grams of emulsifier on one gram of oil phase
// in an ordinary lotion: where trials start, and below what few hold.
const (
	usualShare  = 0.20
	littleShare = 0.10
)

var _ = register(Rule{
	ID:    "S07",
	Name:  "little-emulsifier",
	Title: "Little emulsifier for the oil of a lotion",
	Why: "Every drop has to be coated. Makers of lotions start with a fifth to a quarter of the oil phase; below a tenth the drops run together " +
		"within weeks unless a polymer holds them. Crowded gels in polyol need far less and are not asked.",
	Since:    "0.1",
	Severity: levigate.Advice,
	After:    []string{"C02", "S04"},
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Compares: Exact,
	Messages: map[string]Message{
		"little": {
			Text: "{emulsifier:1} g of emulsifier on {oil:1} g of oil phase: {share:0} % of it; trials usually start at {usual:0} %.",
			Help: "more emulsifier, less oil, or a polymer that holds the drops; a trial that stands four weeks warm settles it",
		},
	},
	Check: func(s *Subject, r *Report) {
		if s.Continuous != levigate.PolarContinuous || s.Water() < lotionFrom {
			return
		}
		var lines []int
		var has float64
		for i, m := range s.Materials() {
			if g := s.Grams(i); g > 0 && m.HasRole("emulsifier") {
				if m.HasRole("thickener") || m.Is("gum") || m.Is("alkali") {
					return // a polymer that holds the drops, or a soap made on the spot
				}
				lines, has = append(lines, i), has+g*(100-m.Water.Typical)/100
			}
		}
		oil := s.declared(levigate.Oil)
		if len(lines) == 0 || oil < 1 {
			return
		}
		if share := has / oil; share < littleShare {
			r.Broken(Note{Say: "little", At: atLines(lines), Args: Args{"emulsifier": has, "oil": oil, "share": 100 * share, "usual": 100 * usualShare}})
		}
	},
	Examples: []Example{
		{Name: "a lotion on a gram", Given: sheet(aqua("74"), oil("25", "Sunflower oil"), emulsifier("1", "Polysorbate 60")), Want: "S07 advice: 1.0 g of emulsifier on 25.0 g of oil phase: 4 % of it; trials usually start at 20 %.\n" +
			"  help: more emulsifier, less oil, or a polymer that holds the drops; a trial that stands four weeks warm settles it\n" +
			"  at: lines/2\n", Shows: Under},
		{Name: "not quite a tenth", Given: sheet(aqua("75"), oil("20", "Sunflower oil"), emulsifier("1.8", "Polysorbate 60")), Want: "S07 advice: 1.8 g of emulsifier on 20.0 g of oil phase: 9 % of it; trials usually start at 20 %.\n" +
			"  help: more emulsifier, less oil, or a polymer that holds the drops; a trial that stands four weeks warm settles it\n" +
			"  at: lines/2\n"},
		{Name: "a tenth", Given: sheet(aqua("75"), oil("20", "Sunflower oil"), emulsifier("2", "Polysorbate 60")), Shows: On},
		{Name: "a quarter", Given: sheet(aqua("75"), oil("20", "Sunflower oil"), emulsifier("5", "Polysorbate 60")), Shows: Over},
		{Name: "a polymer holds it", Given: sheet(aqua("75"), oil("20", "Sunflower oil"), line("0.4", "Crosspolymer", role("emulsifier"), role("thickener")))},
		{Name: "borax makes soap of the beeswax", Given: sheet(aqua("49"), oil("50", "Almond oil"), line("0.5", "Borax", of("Sodium Borate", 53, "alkali"), role("emulsifier")))},
		{Name: "a gel in polyol", Given: sheet(polyol("30", "Glycerin"), oil("65", "Sunflower oil"), emulsifier("3", "Sucrose laurate"))},
	},
})
