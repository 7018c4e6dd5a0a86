package rules

import (
	"slices"

	"levigate"
	"levigate/cite"
)

var _ = register(Rule{
	ID:    "L01",
	Name:  "no-us-name",
	Title: "No US name on file for an ingredient",
	Why: "A US list takes the common name: water, honey, sunflower seed oil. The European lists take Aqua, Mel and the Latin of the plant, " +
		"which the US authority does not accept alone. A Latin name that slips into a US list looks right to everyone who reads the European one, " +
		"so the list leaves the place open instead.",
	Since:    "0.1",
	Severity: levigate.Warn,
	After:    []string{"C02"},
	Sources:  []cite.Ref{{Key: "cfr-701-3"}, {Key: "trade-practice"}},
	Messages: map[string]Message{
		"missing": {
			Text: "The US ingredient list has an open place: no US name is on file for {names}.",
			Help: "ask the supplier for the name on US labels and write it in by hand; a Latin name may stand beside it, not in its place",
		},
	},
	Check: func(s *Subject, r *Report) {
		var names []string
		var lines []int
		for i := range s.Ingredients {
			if in := &s.Ingredients[i]; in.Market == "us" && in.Name == "" {
				names, lines = append(names, in.INCI...), append(lines, in.From...)
			}
		}
		if len(names) == 0 {
			return
		}
		slices.Sort(lines)
		r.Broken(Note{Say: "missing", At: atLines(slices.Compact(lines)), Args: Args{"names": names}})
	},
	Examples: []Example{
		{
			Name: "a plant known by its Latin alone, on two lines",
			Given: sheet(line("70", "Grape seed oil"), line("20", "Glycerin"), line("10", "Grape seed oil, second lot"), sold("us"),
				onLabel("us", "", 80, "Vitis Vinifera Seed Oil", 0, 2), onLabel("us", "Glycerin", 20, "Glycerin", 1)),
			Want: "L01 warn: The US ingredient list has an open place: no US name is on file for Vitis Vinifera Seed Oil.\n" +
				"  help: ask the supplier for the name on US labels and write it in by hand; a Latin name may stand beside it, not in its place\n" +
				"  at: lines/0 lines/2\n",
		},
		{
			Name:  "the same for the EU alone",
			Given: sheet(line("100", "Grape seed oil"), sold("eu"), onLabel("eu", "Vitis Vinifera Seed Oil", 100, "Vitis Vinifera Seed Oil", 0)),
		},
		{
			Name:  "a name on file",
			Given: sheet(line("100", "Honey"), sold("us"), onLabel("us", "Honey", 100, "Mel", 0)),
		},
	},
})

// onLabel adds a place to an ingredient list, its share exact.
func onLabel(market, name string, percent float64, inci string, from ...int) entry {
	return func(a *levigate.Assessment) {
		a.Ingredients = append(a.Ingredients, levigate.Ingredient{
			Market: market, Name: name, INCI: []string{inci}, Percent: levigate.Exactly(percent), From: from,
		})
	}
}
