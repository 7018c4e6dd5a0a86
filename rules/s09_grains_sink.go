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
		"crowded drops, a gum, a wax, a swollen clay, or so much powder that the grains lie on one another.",
	Since:    "0.1",
	Severity: levigate.Advice,
	After:    []string{"C02", "S02"},
	Sources:  []cite.Ref{{Key: "levigate-judgement", At: "Stokes' law, a few hundredths of a pascal"}},
	Messages: map[string]Message{
		"sinks": {
			Text: "{grains:1} g of grains ({names}), and nothing here holds them up.",
			Help: "more oil until the drops crowd, a gum, a wax or a swelling clay; or say on the label that it is shaken",
		},
		"cannot-tell": {
			Text:  "{grains:1} g of grains ({names}); whether the drops crowd enough to hold them cannot be told.",
			Help:  "leave a tall glass of a small batch standing warm for a week",
			Needs: "the density of the finished gel without air, and how high its grains stand after a week",
		},
	},
	Check: func(s *Subject, r *Report) {
		lines := s.Lines(func(i int, m *levigate.Material) bool { return s.Sits(i) == levigate.Grain && s.Grams(i) > 0 })
		var grains float64
		for _, i := range lines {
			grains += s.Grams(i)
		}
		if grains < scrubFrom || s.declared(levigate.Powder) >= pasteFrom || grains >= gelPowder || s.Continuous == levigate.NoLiquid || s.thickens() {
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
		{Name: "shell in glycerin", Given: sheet(polyol("95", "Glycerin"), line("5", "Walnut shell powder", grains())), Want: "S09 advice: 5.0 g of grains (Walnut shell powder), and nothing here holds them up.\n" +
			"  help: more oil until the drops crowd, a gum, a wax or a swelling clay; or say on the label that it is shaken\n" +
			"  at: lines/1\n"},
		{Name: "drops about to touch", Given: sheet(line("5", "Walnut shell powder", grains()), crowding(0.64, 0.6, 0.68)), Want: "S09 advice, cannot tell: 5.0 g of grains (Walnut shell powder); whether the drops crowd enough to hold them cannot be told.\n" +
			"  help: leave a tall glass of a small batch standing warm for a week\n" +
			"  needs: the density of the finished gel without air, and how high its grains stand after a week\n" +
			"  at: lines/0\n"},
		{Name: "a crowded gel", Given: sheet(line("5", "Walnut shell powder", grains()), crowding(0.74, 0.7, 0.76))},
		{Name: "a gum holds them", Given: sheet(aqua("94"), line("5", "Walnut shell powder", grains()), line("1", "Xanthan gum", is("gum")))},
		{Name: "a handful of sugar lies on itself", Given: sheet(oily(), oil("40", "Sunflower oil"), line("60", "Cane sugar", grains()))},
	},
})
