package rules

import (
	"slices"
	"strings"

	"levigate"
	"levigate/cite"
)

var _ = register(Rule{
	ID:    "W07",
	Name:  "undissolved-crystals",
	Title: "Crystals that the water at hand does not dissolve",
	Why: "A sugar or a salt dissolves only as far as the water goes round. What stays behind is felt as grit, " +
		"sinks, and grows on cooling; it also pins the water activity, so that water added later is swallowed before the activity rises. " +
		"Honey and syrups arrive dissolved and may stay so for months before they grain.",
	Since:    "0.1",
	Severity: levigate.Advice,
	After:    []string{"C02"},
	Sources:  []cite.Ref{{Key: "levigate-judgement"}},
	Messages: map[string]Message{
		"stays": {
			Text: "At {temperature:0} °C, per 100 g, these stay undissolved: {most:2 g}.",
			Help: "bring it in as a syrup, grind it fine and mean it, or take less; look for crystals at the coldest storage",
		},
	},
	Check: func(s *Subject, r *Report) {
		var most []Part
		var lines []int
		for _, h := range s.Undissolved() {
			if s.meantAsGrains(h.From) {
				continue
			}
			most = append(most, Part{strings.TrimSuffix(h.Name, undissolved), h.Grams.Typical})
			lines = append(lines, h.From...)
		}
		if len(most) == 0 {
			return
		}
		slices.Sort(lines)
		r.Broken(Note{Say: "stays", At: atLines(slices.Compact(lines)), Args: Args{"temperature": s.Conditions.Temperature, "most": most}})
	},
	Examples: []Example{
		{
			Name:  "a sugar scrub in a little glycerin",
			Given: sheet(line("30", "Glycerin"), line("50", "Sucrose"), line("2", "Sodium chloride"), stays("Sucrose", 46.2, 1), stays("Sodium Chloride", 1.4, 2)),
			Want: "W07 advice: At 25 °C, per 100 g, these stay undissolved: Sucrose (46.20 g) and Sodium Chloride (1.40 g).\n" +
				"  help: bring it in as a syrup, grind it fine and mean it, or take less; look for crystals at the coldest storage\n" +
				"  at: lines/1 lines/2\n",
		},
		{Name: "grains that are meant to stay", Given: sheet(line("30", "Honey", form(levigate.Liquid)), line("45", "White sugar", grains()), stays("Sucrose", 38.7, 0, 1))},
		{Name: "all dissolved", Given: sheet(aqua("60"), line("10", "Sucrose"))},
	},
})

// meantAsGrains reports whether all that bring a substance dry bring it to
// scrub with: grains are meant to stay, and M09 says how many of them do not.
func (s *Subject) meantAsGrains(lines []int) bool {
	return slices.ContainsFunc(lines, func(i int) bool { return s.Sits(i) == levigate.Grain }) &&
		!slices.ContainsFunc(lines, func(i int) bool { return s.Sits(i) != levigate.Grain && !s.cameDissolved(i) })
}
