package rules

import (
	"levigate"
	"levigate/cite"
	"levigate/work"
)

// scrubFrom is the share of grains from which their lying at the bottom is
// seen, g per 100 g; pasteFrom the share of solids that hold one another up.
const (
	scrubFrom = 0.5
	pasteFrom = 40.0
)

var _ = register(Rule{
	ID:    "S09",
	Name:  "grains-sink",
	Title: "Grains in a liquid that does not hold them",
	Why: "A grain of shell of a tenth of a millimetre sinks through a thin oil in minutes and through thick glycerin in a day. Only a yield stress holds it: " +
		"crowded drops, a gum, a wax, a swollen clay, or so much powder that the grains lie on one another. " +
		"Fine powder takes longer: ten micrometres of charcoal sink about four centimetres a day through thin oil.",
	Since:    "0.1",
	Severity: levigate.Advice,
	After:    []string{"C02", "S02"},
	Sources:  []cite.Ref{{Key: "levigate-judgement", At: "Stokes' law, a few hundredths of a pascal"}},
	Messages: map[string]Message{
		"sinks": {
			Text: "{grains:1} g of grains ({names}), and nothing here holds them up.",
			Help: "more oil until the drops crowd, a gum, a wax or a swelling clay; or say on the label that it is shaken",
		},
		"fine": {
			Text: "{powder:1} g of fine powder ({names}) in oil, and nothing here holds it up: it lies at the bottom within days.",
			Help: "a wax, a gellant for oil or a swelling clay made for it; or say on the label that it is shaken",
		},
		"cannot-tell": {
			Text:  "{grains:1} g of grains ({names}); whether the drops crowd enough to hold them cannot be told.",
			Help:  "leave a tall glass of a small batch standing warm for a week",
			Needs: "the density of the finished gel without air, and how high its grains stand after a week",
		},
	},
	Check: func(s *Subject, r *Report) {
		s.judgeFine(r)
		lines := s.Lines(func(i int, m *levigate.Material) bool { return s.Sits(i) == levigate.Grain && s.Grams(i) > 0 })
		grains, solids := 0.0, s.declared(levigate.Powder)
		for _, i := range lines {
			grains += s.Grams(i)
			if mostly(s.Formula.Lines[i].Match.Material, levigate.Solute) {
				solids += s.Grams(i)
			}
		}
		if grains < scrubFrom || max(solids, grains) >= pasteFrom || s.Continuous == levigate.NoLiquid || s.stiffened() {
			return
		}
		n := Note{Say: "sinks", At: atLines(lines), Args: Args{"grains": grains, "names": s.Names(lines)}}
		if f := s.Figure("structure.internal-fraction"); f != nil && f.State != work.Missing && s.Continuous == levigate.PolarContinuous {
			switch f.Against(thickFrom) {
			case work.Above:
				return
			case work.CannotTell:
				n.Say = "cannot-tell"
				r.CannotTell(n)
				return
			}
		}
		r.Broken(n)
	},
	Examples: []Example{
		{Name: "charcoal in an oil", Given: sheet(oily(), oil("98", "Sunflower oil"), line("2", "Charcoal", inOil())), Want: "S09 advice: 2.0 g of fine powder (Charcoal) in oil, and nothing here holds it up: it lies at the bottom within days.\n" +
			"  help: a wax, a gellant for oil or a swelling clay made for it; or say on the label that it is shaken\n" +
			"  at: lines/1\n"},
		{Name: "a gellant holds it", Given: sheet(oily(), oil("95", "Sunflower oil"), line("2", "Charcoal", inOil()), line("3", "Hectorite gellant", is("organoclay")))},
		{Name: "a paste lies on itself", Given: sheet(oily(), oil("55", "Sunflower oil"), line("45", "Kaolin", inOil(), soaks(40, 35, 45)))},
		{Name: "a tint that hardly shows", Given: sheet(oily(), oil("99.6", "Sunflower oil"), line("0.4", "Red iron oxide", inOil()))},
		{Name: "shell in glycerin", Given: sheet(polyol("95", "Glycerin"), line("5", "Walnut shell powder", grains())), Want: "S09 advice: 5.0 g of grains (Walnut shell powder), and nothing here holds them up.\n" +
			"  help: more oil until the drops crowd, a gum, a wax or a swelling clay; or say on the label that it is shaken\n" +
			"  at: lines/1\n"},
		{Name: "drops about to touch", Given: sheet(line("5", "Walnut shell powder", grains()), crowding(0.64, 0.6, 0.68)), Want: "S09 advice, cannot tell: 5.0 g of grains (Walnut shell powder); whether the drops crowd enough to hold them cannot be told.\n" +
			"  help: leave a tall glass of a small batch standing warm for a week\n" +
			"  needs: the density of the finished gel without air, and how high its grains stand after a week\n" +
			"  at: lines/0\n"},
		{Name: "a crowded gel", Given: sheet(line("5", "Walnut shell powder", grains()), crowding(0.74, 0.7, 0.76))},
		{Name: "a gum holds them", Given: sheet(aqua("94"), line("5", "Walnut shell powder", grains()), line("1", "Xanthan gum", is("gum")))},
		{Name: "a third of sugar does not yet lie on itself", Given: sheet(oily(), oil("65", "Sunflower oil"), line("35", "Cane sugar", grains())), Want: "S09 advice: 35.0 g of grains (Cane sugar), and nothing here holds them up.\n" +
			"  help: more oil until the drops crowd, a gum, a wax or a swelling clay; or say on the label that it is shaken\n" +
			"  at: lines/1\n"},
		{Name: "half a gram is seen", Given: sheet(polyol("99.5", "Glycerin"), line("0.5", "Poppy seeds", grains())), Want: "S09 advice: 0.5 g of grains (Poppy seeds), and nothing here holds them up.\n" +
			"  help: more oil until the drops crowd, a gum, a wax or a swelling clay; or say on the label that it is shaken\n" +
			"  at: lines/1\n"},
		{Name: "a trace", Given: sheet(polyol("99.6", "Glycerin"), line("0.4", "Poppy seeds", grains()))},
		{Name: "enough to lie on itself", Given: sheet(oily(), oil("60", "Sunflower oil"), line("40", "Cane sugar", grains()))},
		{Name: "a handful of sugar lies on itself", Given: sheet(oily(), oil("40", "Sunflower oil"), line("60", "Cane sugar", grains()))},
	},
})

// judgeFine looks at fine powder in a product of oil that nothing thickens.
func (s *Subject) judgeFine(r *Report) {
	if s.Continuous != levigate.OilContinuous || s.stiffened() {
		return
	}
	lines := s.Lines(func(i int, _ *levigate.Material) bool { return s.Sits(i) == levigate.InOil && s.Grams(i) > 0 })
	var powder float64
	for _, i := range lines {
		powder += s.Grams(i)
	}
	if powder >= scrubFrom && powder < pasteFrom {
		r.Broken(Note{Say: "fine", At: atLines(lines), Args: Args{"powder": powder, "names": s.Names(lines)}})
	}
}
