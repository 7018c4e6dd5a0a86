package rules

import (
	"slices"

	"levigate"
	"levigate/cite"
)

var _ = register(Rule{
	ID:    "L05",
	Name:  "on-the-banned-list",
	Title: "A substance that the EU list of banned ones names",
	Why: "Annex II lists what may not be in a cosmetic product in the EU and Great Britain: borax, once the soap-maker of every cold cream, is one of them. " +
		"Old recipes and shops do not say so. Only what this library marks is looked for; the list itself is far longer and changes every year.",
	Since:    "0.1",
	Severity: levigate.Warn,
	Sources:  []cite.Ref{{Key: "eu-annexes", At: "II"}},
	Messages: map[string]Message{
		"banned": {
			Text: "{names}: on the list of substances that may not be in a cosmetic product in the EU and Great Britain.",
			Help: "take it out, or ask the assessor whether the entry covers what you have",
		},
		"elsewhere": {
			Text: "{names}: banned from cosmetics in the EU and Great Britain; nothing is on file about the market named here.",
			Help: "hold it against the law of that market before you go on",
		},
	},
	Check: func(s *Subject, r *Report) {
		found := amounts(s, "annex-ii")
		if grams(found) == 0 {
			return
		}
		n := Note{Say: "banned", At: atLines(linesOf(found)), Args: Args{"names": namesOf(found)}}
		if markets, _ := s.Formula.ListMarkets(); !slices.Contains(markets, "eu") && !slices.Contains(markets, "gb") {
			n.Say = "elsewhere"
		}
		r.Broken(n)
	},
	Examples: []Example{
		{Name: "cold cream of beeswax and borax", Given: sheet(sold("eu"), aqua("35"), line("0.6", "Borax", of("Sodium Borate", 100, "annex-ii"))), Want: "L05 warn: Sodium Borate: on the list of substances that may not be in a cosmetic product in the EU and Great Britain.\n" +
			"  help: take it out, or ask the assessor whether the entry covers what you have\n" +
			"  at: lines/1\n"},
		{Name: "for the US alone", Given: sheet(sold("us"), aqua("35"), line("0.6", "Borax", of("Sodium Borate", 100, "annex-ii"))), Want: "L05 warn: Sodium Borate: banned from cosmetics in the EU and Great Britain; nothing is on file about the market named here.\n" +
			"  help: hold it against the law of that market before you go on\n" +
			"  at: lines/1\n"},
		{Name: "nothing of the kind", Given: sheet(aqua("99"), line("1", "Sodium citrate", of("Sodium Citrate", 100)))},
	},
})
