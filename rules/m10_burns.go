package rules

import (
	"slices"

	"levigate"
	"levigate/cite"
)

var _ = register(Rule{
	ID:    "M10",
	Name:  "burns",
	Title: "Acid, alkali or hot wax at the bench",
	Why: "What is mild in the jar is not mild on the balance: a lye of 10 % can cost an eye its sight, lactic acid of 80 % burns the skin, " +
		"and a pot of molten wax sticks to it. Acid and lye poured together boil.",
	Since:    "0.1",
	Severity: levigate.Advice,
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Messages: map[string]Message{
		"acid":    {Text: "Burns skin and eyes as it is weighed: {names}.", Help: "gloves and goggles; add it to the water, never water to it, and in small portions"},
		"caustic": {Text: "Burns skin and eyes as it is weighed: {names}.", Help: "gloves and goggles, water at hand to rinse; add it to the water and in small portions, and read the pH after each"},
		"both": {
			Text: "Acid and lye in one formula, each burns as it is weighed: {names}.",
			Help: "gloves and goggles; never in one cup: undiluted they boil and spit, so dilute the first in the water phase before the second goes in",
		},
		"hot-wax": {
			Text: "A pot of molten wax: {names}.",
			Help: "a water bath and a thermometer, dry tools, sleeves down; no water into the pot, and pour with both hands free",
		},
	},
	Check: func(s *Subject, r *Report) {
		find := func(caution string) []int {
			return s.Lines(func(i int, m *levigate.Material) bool { return m.Warns(caution) && s.Grams(i) > 0 })
		}
		acid, caustic, wax := find("acid"), find("caustic"), find("hot-wax")
		say := func(key string, lines []int) {
			if len(lines) > 0 {
				r.Broken(Note{Say: key, Row: key, At: atLines(lines), Args: Args{"names": s.Names(lines)}})
			}
		}
		if len(acid) > 0 && len(caustic) > 0 {
			lines := append(acid, caustic...)
			slices.Sort(lines)
			say("both", lines)
		} else {
			say("acid", acid)
			say("caustic", caustic)
		}
		if s.Continuous == levigate.OilContinuous {
			say("hot-wax", wax)
		}
	},
	Examples: []Example{
		{Name: "lactic acid", Given: sheet(aqua("99"), line("1", "Lactic acid 80 %", caution("acid"))), Want: "M10/acid advice: Burns skin and eyes as it is weighed: Lactic acid 80 %.\n" +
			"  help: gloves and goggles; add it to the water, never water to it, and in small portions\n" +
			"  at: lines/1\n"},
		{Name: "lye", Given: sheet(aqua("90"), line("10", "Sodium hydroxide solution 10 %", caution("caustic"))), Want: "M10/caustic advice: Burns skin and eyes as it is weighed: Sodium hydroxide solution 10 %.\n" +
			"  help: gloves and goggles, water at hand to rinse; add it to the water and in small portions, and read the pH after each\n" +
			"  at: lines/1\n"},
		{Name: "both", Given: sheet(aqua("95"), line("1", "Lactic acid 80 %", caution("acid")), line("4", "Sodium hydroxide solution 10 %", caution("caustic"))), Want: "M10/both advice: Acid and lye in one formula, each burns as it is weighed: Lactic acid 80 % and Sodium hydroxide solution 10 %.\n" +
			"  help: gloves and goggles; never in one cup: undiluted they boil and spit, so dilute the first in the water phase before the second goes in\n" +
			"  at: lines/1 lines/2\n"},
		{Name: "a balm", Given: sheet(oily(), oil("86", "Castor oil"), line("14", "Beeswax, white", caution("hot-wax"))), Want: "M10/hot-wax advice: A pot of molten wax: Beeswax, white.\n" +
			"  help: a water bath and a thermometer, dry tools, sleeves down; no water into the pot, and pour with both hands free\n" +
			"  at: lines/1\n"},
		{Name: "the wax of a lotion melts in a warm oil", Given: sheet(aqua("97"), line("3", "Cetyl alcohol", caution("hot-wax")))},
	},
})
