package rules

import (
	"levigate"
	"levigate/cite"
)

// keepsIn is the share of the oil phase that oil takes up of most such
// substances and keeps in the cold, %.
const keepsIn = 1.0

var _ = register(Rule{
	ID:    "M20",
	Name:  "comes-out-of-oil",
	Title: "Dissolves in warm oil and may come out of the cold one",
	Why: "Coenzyme Q10, phytosterols, ascorbyl palmitate and their kind melt clear into a hot oil, and lie in it as needles or sand a week later. " +
		"Esters of middling polarity hold more than plant oils do.",
	Since:    "0.1",
	Severity: levigate.Advice,
	After:    []string{"C02"},
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Messages: map[string]Message{
		"may": {
			Text:  "{share:1} % of the oil phase is {names}: it may come out in the cold.",
			Help:  "less of it, or an ester it dissolves in better; leave the oil phase alone in the fridge for a week and look",
			Needs: "a clear oil phase after a week at 5 °C",
		},
	},
	Check: func(s *Subject, r *Report) {
		found := amounts(s, "comes-out-of-oil")
		oil := s.declared(levigate.Oil)
		if grams(found) == 0 || oil == 0 {
			return
		}
		if share := 100 * grams(found) / oil; share > keepsIn {
			r.CannotTell(Note{Say: "may", At: atLines(linesOf(found)), Args: Args{"share": share, "names": namesOf(found)}})
		}
	},
	Examples: []Example{
		{Name: "an oil serum with much Q10", Given: sheet(oily(), oil("98", "Jojoba oil"), line("2", "Coenzyme Q10", of("Ubiquinone", 100, "comes-out-of-oil"), kind(levigate.Oil))), Want: "M20 advice, cannot tell: 2.0 % of the oil phase is Ubiquinone: it may come out in the cold.\n" +
			"  help: less of it, or an ester it dissolves in better; leave the oil phase alone in the fridge for a week and look\n" +
			"  needs: a clear oil phase after a week at 5 °C\n" +
			"  at: lines/1\n"},
		{Name: "more than one per cent", Given: sheet(oily(), oil("95", "Jojoba oil"), line("5", "Phytosterols", of("Phytosterols", 100, "comes-out-of-oil"), kind(levigate.Oil))), Want: "M20 advice, cannot tell: 5.0 % of the oil phase is Phytosterols: it may come out in the cold.\n" +
			"  help: less of it, or an ester it dissolves in better; leave the oil phase alone in the fridge for a week and look\n" +
			"  needs: a clear oil phase after a week at 5 °C\n" +
			"  at: lines/1\n"},
		{Name: "a little more than one", Given: sheet(oily(), oil("98.8", "Jojoba oil"), line("1.2", "Coenzyme Q10", of("Ubiquinone", 100, "comes-out-of-oil"), kind(levigate.Oil))), Want: "M20 advice, cannot tell: 1.2 % of the oil phase is Ubiquinone: it may come out in the cold.\n" +
			"  help: less of it, or an ester it dissolves in better; leave the oil phase alone in the fridge for a week and look\n" +
			"  needs: a clear oil phase after a week at 5 °C\n" +
			"  at: lines/1\n"},
		{Name: "one per cent", Given: sheet(oily(), oil("99", "Jojoba oil"), line("1", "Coenzyme Q10", of("Ubiquinone", 100, "comes-out-of-oil"), kind(levigate.Oil)))},
		{Name: "a trace", Given: sheet(oily(), oil("99.9", "Jojoba oil"), line("0.1", "Coenzyme Q10", of("Ubiquinone", 100, "comes-out-of-oil"), kind(levigate.Oil)))},
	},
})
