package rules

import (
	"levigate"
	"levigate/cite"
)

var _ = register(Rule{
	ID:    "L03",
	Name:  "releases-formaldehyde",
	Title: "A preservative that releases formaldehyde, and the sentence for it",
	Why: "Some preservatives work by letting formaldehyde go, a little at a time; people who are allergic to it look for the word. In the EU and, since July 2026, in Great " +
		"Britain the label has to say so once the product holds more than 0.001 % released, which the usual level of such a preservative mostly does.",
	Since:    "0.1",
	Severity: levigate.Warn,
	Sources:  []cite.Ref{{Key: "eu-annexes", At: "V, preamble 2"}},
	Messages: map[string]Message{
		"releases": {
			Text:  "{names} releases formaldehyde; above 0.001 % released in the product the label must say \"releases formaldehyde\". How much it is nobody measured.",
			Help:  "print the sentence, or have the total released formaldehyde measured in the finished product",
			Needs: "total releasable formaldehyde in the finished product",
		},
	},
	Check: func(s *Subject, r *Report) {
		found := amounts(s, "formaldehyde-releaser")
		if markets, _ := s.Formula.ListMarkets(); grams(found) == 0 || len(markets) == 1 && markets[0] == "us" {
			return
		}
		r.CannotTell(Note{Say: "releases", At: atLines(linesOf(found)), Args: Args{"names": namesOf(found)}})
	},
	Examples: []Example{
		{
			Name:  "a shampoo with a hydantoin",
			Given: sheet(product("shampoo"), sold("eu"), aqua("99"), line("0.3", "Hydantoin, 55 %", of("DMDM Hydantoin", 55, "formaldehyde-releaser"), of("Aqua", 45))),
			Want: "L03 warn, cannot tell: DMDM Hydantoin releases formaldehyde; above 0.001 % released in the product the label must say \"releases formaldehyde\". How much it is nobody measured.\n" +
				"  help: print the sentence, or have the total released formaldehyde measured in the finished product\n" +
				"  needs: total releasable formaldehyde in the finished product\n" +
				"  at: lines/1\n",
		},
		{Name: "sold in the US alone", Given: sheet(product("shampoo"), sold("us"), aqua("99"), line("0.3", "Hydantoin", of("DMDM Hydantoin", 100, "formaldehyde-releaser")))},
		{Name: "another preservative", Given: sheet(aqua("99"), line("1", "Phenoxyethanol", of("Phenoxyethanol", 100, "preservative")))},
	},
})
