package rules

import (
	"slices"

	"levigate"
	"levigate/cite"
)

var _ = register(Rule{
	ID:    "L02",
	Name:  "order-not-certain",
	Title: "The order of the ingredient list is not certain",
	Why: "The list falls by weight as added. Where a blend's parts are known only as ranges, two ingredients may change places " +
		"from one end of their ranges to the other, and nobody can tell from the paper which is right. " +
		"Below 1 % the order is free and this rule keeps quiet.",
	Since:    "0.1",
	Severity: levigate.Advice,
	After:    []string{"C02"},
	Sources:  []cite.Ref{{Key: "levigate-judgement"}},
	Messages: map[string]Message{
		"overlap": {
			Text:  "The order of {names} in the ingredient list cannot be told: within the ranges of their raw materials their shares overlap or cross 1 %.",
			Help:  "the list is drafted from the typical shares",
			Needs: "the composition of the lots from the supplier, with narrower ranges",
		},
	},
	Check: func(s *Subject, r *Report) {
		var names, seen []string
		var lines []int
		for i := range s.Ingredients {
			in := &s.Ingredients[i]
			// Several markets' lists doubt the same shares; one of them is said.
			if !in.Uncertain || slices.Contains(seen, in.INCI[0]) {
				continue
			}
			name := in.Name
			if name == "" {
				name = in.INCI[0]
			}
			names, seen, lines = append(names, name), append(seen, in.INCI...), append(lines, in.From...)
		}
		if len(names) == 0 {
			return
		}
		slices.Sort(lines)
		r.CannotTell(Note{Say: "overlap", At: atLines(slices.Compact(lines)), Args: Args{"names": names}})
	},
	Examples: []Example{
		{
			Name: "a blend stated as ranges, for two markets",
			Given: sheet(line("60", "Water"), line("40", "Emulsifier blend"),
				onLabel("eu", "Aqua", 60, "Aqua", 0),
				onLabel("eu", "Cetearyl Alcohol", 22, "Cetearyl Alcohol", 1), doubted(16, 28),
				onLabel("eu", "Ceteareth-20", 18, "Ceteareth-20", 1), doubted(12, 24),
				onLabel("us", "Water", 60, "Aqua", 0),
				onLabel("us", "Cetearyl Alcohol", 22, "Cetearyl Alcohol", 1), doubted(16, 28),
				onLabel("us", "Ceteareth-20", 18, "Ceteareth-20", 1), doubted(12, 24)),
			Want: "L02 advice, cannot tell: The order of Cetearyl Alcohol and Ceteareth-20 in the ingredient list cannot be told: " +
				"within the ranges of their raw materials their shares overlap or cross 1 %.\n" +
				"  help: the list is drafted from the typical shares\n" +
				"  needs: the composition of the lots from the supplier, with narrower ranges\n" +
				"  at: lines/1\n",
		},
		{
			Name:  "shares known exactly, two of them equal",
			Given: sheet(line("50", "Kaolin"), line("50", "Glycerin"), onLabel("eu", "Glycerin", 50, "Glycerin", 1), onLabel("eu", "Kaolin", 50, "Kaolin", 0)),
		},
	},
})

// doubted gives the place before it a range that overlaps another's.
func doubted(low, high float64) entry {
	return func(a *levigate.Assessment) {
		in := &a.Ingredients[len(a.Ingredients)-1]
		in.Percent.Low, in.Percent.High, in.Uncertain = low, high, true
	}
}
