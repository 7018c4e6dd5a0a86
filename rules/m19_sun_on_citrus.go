package rules

import (
	"slices"

	"levigate"
	"levigate/cite"
)

var _ = register(Rule{
	ID:    "M19",
	Name:  "sun-on-citrus",
	Title: "A pressed citrus oil in what stays on the skin",
	Why: "Bergamot, lime and other pressed peel oils hold furocoumarins: with sunlight on the skin they burn and leave brown marks for months. " +
		"Distilled oils and those freed of them do not. The perfumers' association and the EU bound what may stay on skin that sees the sun.",
	Since:    "0.1",
	Severity: levigate.Warn,
	After:    []string{"C02"},
	Sources:  []cite.Ref{{Key: "recalled"}},
	Messages: map[string]Message{
		"stays": {
			Text: "{percent:2} % of {names} stays on the skin, and in sunlight it may burn.",
			Help: "take the distilled oil or one without furocoumarins, or hold it against the limit on the supplier's certificate for your kind of product",
		},
		"either": {
			Text:  "{percent:2} % of {names}: left on, it may burn in sunlight.",
			Help:  "say in the formula whether it is rinsed off; hold it against the limit on the supplier's certificate for your kind of product",
			Needs: "whether the product stays on the skin",
		},
	},
	Check: func(s *Subject, r *Report) {
		found := amounts(s, "phototoxic")
		uses := usesOf(s.Formula.Product)
		if grams(found) == 0 || !slices.Contains(uses, leaveOn) {
			return
		}
		n := Note{Say: "stays", At: atLines(linesOf(found)), Args: Args{"percent": grams(found), "names": namesOf(found)}}
		if len(uses) > 1 {
			n.Say = "either"
			r.CannotTell(n)
			return
		}
		r.Broken(n)
	},
	Examples: []Example{
		{Name: "bergamot in a hand cream", Given: sheet(product("hand-cream"), aqua("99"), line("0.4", "Bergamot oil", of("Citrus Aurantium Bergamia Fruit Oil", 100, "phototoxic"))), Want: "M19 warn: 0.40 % of Citrus Aurantium Bergamia Fruit Oil stays on the skin, and in sunlight it may burn.\n" +
			"  help: take the distilled oil or one without furocoumarins, or hold it against the limit on the supplier's certificate for your kind of product\n" +
			"  at: lines/1\n"},
		{Name: "in a make-up remover", Given: sheet(product("make-up-remover"), oily(), line("0.4", "Lime oil", of("Citrus Aurantifolia Oil", 100, "phototoxic"))), Want: "M19 warn, cannot tell: 0.40 % of Citrus Aurantifolia Oil: left on, it may burn in sunlight.\n" +
			"  help: say in the formula whether it is rinsed off; hold it against the limit on the supplier's certificate for your kind of product\n" +
			"  needs: whether the product stays on the skin\n" +
			"  at: lines/0\n"},
		{Name: "in a hand wash", Given: sheet(product("hand-wash"), aqua("99"), line("0.4", "Bergamot oil", of("Citrus Aurantium Bergamia Fruit Oil", 100, "phototoxic")))},
	},
})
