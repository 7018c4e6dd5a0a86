package rules

import (
	"slices"

	"levigate"
	"levigate/cite"
)

var _ = register(Rule{
	ID:    "L04",
	Name:  "aha-sun",
	Title: "An alpha-hydroxy acid, and the sun",
	Why: "Lactic, glycolic and mandelic acid leave the skin more open to sunburn for about a week. The US authority asks for its sunburn alert on the pack of what stays " +
		"or is used to exfoliate; elsewhere the assessor will want the same said. As a buffer at a few tenths of a per cent the acid is mostly neutralised.",
	Since:    "0.1",
	Severity: levigate.Advice,
	Sources:  []cite.Ref{{Key: "cir-aha2017"}},
	Compares: Exact,
	Messages: map[string]Message{
		"us": {
			Text: "{acid:1} % of {names}: the US authority asks for its sunburn alert on such a pack.",
			Help: "take the wording from its guidance, and say in the product file what the acid is for and at which pH",
		},
		"elsewhere": {
			Text: "{acid:1} % of {names}: the skin burns more easily for about a week.",
			Help: "say sun protection and the pH in the product file, and ask the assessor for the words on the pack",
		},
	},
	Check: func(s *Subject, r *Report) {
		if uses := UsesOf(s.Formula.Product); s.Formula.Product != "other-rinse-off" && !slices.Contains(uses, leaveOn) {
			return // a shampoo is off before the acid does anything; a peel is not
		}
		found := amounts(s, "aha")
		if grams(found) < ahaFrom {
			return
		}
		n := Note{Say: "elsewhere", At: atLines(linesOf(found)), Args: Args{"acid": grams(found), "names": namesOf(found)}}
		if markets, _ := s.Formula.ListMarkets(); slices.Contains(markets, "us") {
			n.Say = "us"
		}
		r.Broken(n)
	},
	Examples: []Example{
		{Name: "a foot cream for the US", Given: sheet(sold("us"), aqua("90"), line("5", "Lactic acid, 80 %", of("Lactic Acid", 80, "aha"), of("Aqua", 20))), Want: "L04 advice: 4.0 % of Lactic Acid: the US authority asks for its sunburn alert on such a pack.\n" +
			"  help: take the wording from its guidance, and say in the product file what the acid is for and at which pH\n" +
			"  at: lines/1\n", Shows: Over},
		{Name: "one per cent in the EU", Given: sheet(sold("eu"), aqua("90"), line("1", "Lactic acid", of("Lactic Acid", 100, "aha"))), Want: "L04 advice: 1.0 % of Lactic Acid: the skin burns more easily for about a week.\n" +
			"  help: say sun protection and the pH in the product file, and ask the assessor for the words on the pack\n" +
			"  at: lines/1\n", Shows: On},
		{Name: "in a fizzing bath", Given: sheet(product("bath"), sold("us"), line("25", "Citric acid", of("Citric Acid", 100, "aha")))},
		{Name: "a peel is rinsed off too", Given: sheet(product("other-rinse-off"), sold("us"), aqua("80"), line("10", "Glycolic acid", of("Glycolic Acid", 100, "aha"))), Want: "L04 advice: 10.0 % of Glycolic Acid: the US authority asks for its sunburn alert on such a pack.\n" +
			"  help: take the wording from its guidance, and say in the product file what the acid is for and at which pH\n" +
			"  at: lines/1\n"},
		{Name: "as a buffer", Given: sheet(sold("us"), aqua("99"), line("0.9", "Lactic acid", of("Lactic Acid", 100, "aha"))), Shows: Under},
	},
})

// ahaFrom is the share from which it is more than a buffer, %. A judgement.
const ahaFrom = 1.0
