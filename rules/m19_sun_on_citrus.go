package rules

import (
	"slices"

	"levigate"
	"levigate/cite"
	"levigate/refdata"
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
	Limits:   []string{"limits/sun"},
	Compares: Exact,
	Messages: map[string]Message{
		"over": {
			Text: "{names}: {percent:2} % stays on the skin, {times:1} times the limit recalled for skin that sees the sun.",
			Help: "take the distilled oil or one without furocoumarins, or less; the supplier's certificate has the limit for your kind of product",
		},
		"within": {
			Text: "{names}: {percent:2} % stays on the skin and in sunlight it may burn; the limit recalled is not passed.",
			Help: "hold it against the limit on the supplier's certificate for your kind of product",
		},
		"no-row": {
			Text: "{names}: {percent:2} % stays on the skin, where in sunlight it may burn; no limit is on file.",
			Help: "take the distilled oil or one without furocoumarins, or hold it against the limit on the supplier's certificate",
		},
		"either": {
			Text:  "{names}: {percent:2} %; left on, it may burn in sunlight.",
			Help:  "say in the formula whether it is rinsed off; hold it against the limit on the supplier's certificate for your kind of product",
			Needs: "whether the product stays on the skin",
		},
	},
	Check: func(s *Subject, r *Report) {
		found := amounts(s, "phototoxic")
		uses := UsesOf(s.Formula.Product)
		if grams(found) == 0 || !slices.Contains(uses, leaveOn) {
			return
		}
		n := Note{At: atLines(linesOf(found)), Args: Args{"percent": grams(found), "names": s.Names(linesOf(found))}}
		used, known := s.sunUsed(found)
		switch {
		case len(uses) > 1:
			n.Say = "either"
			r.CannotTell(n)
			return
		case !known:
			n.Say = "no-row"
		case used > 1:
			n.Say, n.Args["times"] = "over", used
		default:
			n.Say, n.Level = "within", levigate.Advice
		}
		r.Broken(n)
	},
	Examples: []Example{
		{Name: "too much bergamot in a hand cream", Given: sheet(product("hand-cream"), aqua("99"), line("0.6", "Bergamot oil, expressed", of("Citrus Aurantium Bergamia Peel Oil", 100, "phototoxic"))), Want: "M19 warn: Bergamot oil, expressed: 0.60 % stays on the skin, 1.5 times the limit recalled for skin that sees the sun.\n" +
			"  help: take the distilled oil or one without furocoumarins, or less; the supplier's certificate has the limit for your kind of product\n" +
			"  at: lines/1\n", Shows: Over},
		{Name: "two of them share one limit", Given: sheet(product("hand-cream"), aqua("98"), line("0.3", "Bergamot oil, expressed", of("Citrus Aurantium Bergamia Peel Oil", 100, "phototoxic")), line("1", "Lemon oil, expressed", of("Citrus Limon Peel Oil", 100, "phototoxic"))), Want: "M19 warn: Bergamot oil, expressed and Lemon oil, expressed: 1.30 % stays on the skin, 1.2 times the limit recalled for skin that sees the sun.\n" +
			"  help: take the distilled oil or one without furocoumarins, or less; the supplier's certificate has the limit for your kind of product\n" +
			"  at: lines/1 lines/2\n"},
		{Name: "on the limit", Given: sheet(product("hand-cream"), aqua("98"), line("2", "Lemon oil, expressed", of("Citrus Limon Peel Oil", 100, "phototoxic"))), Want: "M19 advice: Lemon oil, expressed: 2.00 % stays on the skin and in sunlight it may burn; the limit recalled is not passed.\n" +
			"  help: hold it against the limit on the supplier's certificate for your kind of product\n" +
			"  at: lines/1\n", Shows: On},
		{Name: "an oil without a row", Given: sheet(product("hand-cream"), aqua("99"), line("0.2", "Rue oil", of("Ruta Graveolens Oil", 100, "phototoxic"))), Want: "M19 warn: Rue oil: 0.20 % stays on the skin, where in sunlight it may burn; no limit is on file.\n" +
			"  help: take the distilled oil or one without furocoumarins, or hold it against the limit on the supplier's certificate\n" +
			"  at: lines/1\n"},
		{Name: "in a make-up remover", Given: sheet(product("make-up-remover"), oily(), line("0.4", "Lime oil", of("Citrus Aurantifolia Oil", 100, "phototoxic"))), Want: "M19 warn, cannot tell: Lime oil: 0.40 %; left on, it may burn in sunlight.\n" +
			"  help: say in the formula whether it is rinsed off; hold it against the limit on the supplier's certificate for your kind of product\n" +
			"  needs: whether the product stays on the skin\n" +
			"  at: lines/0\n"},
		{Name: "in a hand wash", Given: sheet(product("hand-wash"), aqua("99"), line("0.6", "Bergamot oil, expressed", of("Citrus Aurantium Bergamia Peel Oil", 100, "phototoxic"))), Shows: Under},
	},
})

// sunUsed adds up the shares of their limits that oils use up; false where one
// has no row. An oil marked as a raw material goes by what it is declared as.
func (s *Subject) sunUsed(oils []amount) (used float64, known bool) {
	for _, a := range oils {
		name := a.name
		if m := s.Formula.Lines[a.line].Match.Material; a.substance == nil && len(m.Declared) > 0 {
			name = m.Declared[0].INCI
		}
		at := slices.IndexFunc(refdata.SunLimits(), func(l refdata.SunLimit) bool { return l.INCI == name })
		if at < 0 {
			return 0, false
		}
		used += a.grams / refdata.SunLimits()[at].Limit
	}
	return used, true
}
