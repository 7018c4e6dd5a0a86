package rules

import (
	"slices"

	"levigate"
	"levigate/cite"
)

// wetFrom is the water from which a preservative is at work in a product, g per
// 100 g; below it the question is the water activity's.
const wetFrom = 20.0

// meantFrom is the share from which it is meant to preserve this product, and
// is not what a raw material brought along for itself, %.
const meantFrom = 0.1

var _ = register(Rule{
	ID:    "M16",
	Name:  "acid-preservative",
	Title: "A preservative that works only when it is acid enough",
	Why: "Benzoic, sorbic, dehydroacetic and salicylic acid stop microbes only undissociated. Of benzoate 14 % is at work at pH 5 and 5 % at pH 5.5; of sorbate 36 " +
		"and 15 %. Sold as salts they make water alkaline, so without an acid most of what was weighed does nothing.",
	Since:    "0.1",
	Severity: levigate.Warn,
	After:    []string{"C02"},
	Compares: Exact,
	Sources:  []cite.Ref{{Key: "supplier-notes"}, {Key: "levigate-judgement", At: "shares at work from pKa 4.2 and 4.76"}},
	Messages: map[string]Message{
		"no-acid": {
			Text:  "Works only below about pH 5, and nothing here lowers the pH: {names}.",
			Help:  "bring the finished product to pH 4.5 to 5 with a little citric or lactic acid, or take a preservative that works at its own pH",
			Needs: "the pH of the finished product",
		},
		"measure": {
			Text:  "Works only below about pH 5, and no reading of the pH is on file: {names}.",
			Help:  "measure the finished product and again after two weeks, since it drifts; correct it with the acid that is in it",
			Needs: "the pH of the finished product, at once and after two weeks",
		},
	},
	Check: func(s *Subject, r *Report) {
		if s.Continuous != levigate.PolarContinuous || s.Water() < wetFrom {
			return
		}
		found := amounts(s, "acid-preservative")
		if s.HasRole("preservative") {
			// Something is there to preserve: what a cleanser or an extract brings
			// along for itself is not it.
			found = slices.DeleteFunc(found, func(a amount) bool { return !s.Formula.Lines[a.line].Match.Material.HasRole("preservative") })
		}
		if grams(found) < meantFrom {
			return
		}
		n := Note{Say: "measure", At: atLines(linesOf(found)), Args: Args{"names": namesOf(found)}}
		if !s.HasRole("acid") && !s.holds("acid") && !s.holds("aha") {
			n.Say = "no-acid"
			r.Broken(n)
			return
		}
		n.Level = levigate.Advice
		r.CannotTell(n)
	},
	Examples: []Example{
		{
			Name:  "benzoate and nothing sour",
			Given: sheet(aqua("99"), line("0.5", "Sodium benzoate", of("Sodium Benzoate", 100, "acid-preservative"))),
			Want: "M16 warn: Works only below about pH 5, and nothing here lowers the pH: Sodium Benzoate.\n" +
				"  help: bring the finished product to pH 4.5 to 5 with a little citric or lactic acid, or take a preservative that works at its own pH\n" +
				"  needs: the pH of the finished product\n" +
				"  at: lines/1\n", Shows: Over,
		},
		{
			Name:  "with citric acid",
			Given: sheet(aqua("99"), line("0.5", "Sodium benzoate", of("Sodium Benzoate", 100, "acid-preservative")), line("0.2", "Citric acid", of("Citric Acid", 100, "acid"))),
			Want: "M16 advice, cannot tell: Works only below about pH 5, and no reading of the pH is on file: Sodium Benzoate.\n" +
				"  help: measure the finished product and again after two weeks, since it drifts; correct it with the acid that is in it\n" +
				"  needs: the pH of the finished product, at once and after two weeks\n" +
				"  at: lines/1\n",
		},
		{
			Name:  "a tenth of a per cent",
			Given: sheet(aqua("99"), line("0.1", "Potassium sorbate", of("Potassium Sorbate", 100, "acid-preservative"))),
			Want: "M16 warn: Works only below about pH 5, and nothing here lowers the pH: Potassium Sorbate.\n" +
				"  help: bring the finished product to pH 4.5 to 5 with a little citric or lactic acid, or take a preservative that works at its own pH\n" +
				"  needs: the pH of the finished product\n" +
				"  at: lines/1\n", Shows: On,
		},
		{Name: "what aloe brings along", Given: sheet(aqua("55"), line("45", "Aloe juice", of("Aqua", 99.8), of("Sodium Benzoate", 0.2, "acid-preservative"), water(99.8))), Shows: Under},
		{
			Name:  "a fifth of water",
			Given: sheet(aqua("20"), polyol("79", "Glycerin"), line("0.5", "Sodium benzoate", of("Sodium Benzoate", 100, "acid-preservative"))),
			Want: "M16 warn: Works only below about pH 5, and nothing here lowers the pH: Sodium Benzoate.\n" +
				"  help: bring the finished product to pH 4.5 to 5 with a little citric or lactic acid, or take a preservative that works at its own pH\n" +
				"  needs: the pH of the finished product\n" +
				"  at: lines/2\n",
		},
		{Name: "not quite a fifth", Given: sheet(aqua("19"), polyol("80", "Glycerin"), line("0.5", "Sodium benzoate", of("Sodium Benzoate", 100, "acid-preservative")))},
		{Name: "a gel with little water", Given: sheet(aqua("2"), polyol("97", "Glycerin"), line("0.5", "Sodium benzoate", of("Sodium Benzoate", 100, "acid-preservative")))},
		{
			Name: "what a cleanser brings along, beside another preservative",
			Given: sheet(aqua("59"), line("40", "Laureth sulfate, 27 %", of("Aqua", 72), of("Sodium Benzoate", 0.4, "acid-preservative"), water(72)),
				line("0.4", "Hydantoin", of("DMDM Hydantoin", 55, "preservative"), role("preservative"))),
		},
		{
			Name:  "a gel of aloe lives by what the aloe brings",
			Given: sheet(line("94", "Aloe gel", of("Aqua", 98), of("Sodium Benzoate", 0.2, "acid-preservative"), water(98))),
			Want: "M16 warn: Works only below about pH 5, and nothing here lowers the pH: Sodium Benzoate.\n" +
				"  help: bring the finished product to pH 4.5 to 5 with a little citric or lactic acid, or take a preservative that works at its own pH\n" +
				"  needs: the pH of the finished product\n" +
				"  at: lines/0\n",
		},
		{Name: "another preservative", Given: sheet(aqua("99"), line("1", "Phenoxyethanol", of("Phenoxyethanol", 100, "preservative")))},
	},
})
