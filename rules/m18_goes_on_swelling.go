package rules

import (
	"levigate"
	"levigate/cite"
)

// From so much of a swelling clay, and of water to swell it, it goes on for
// days, g per 100 g.
const (
	swellsFrom = 2.0
	swellsIn   = 5.0
)

var _ = register(Rule{
	ID:    "M18",
	Name:  "goes-on-swelling",
	Title: "A clay that goes on swelling after the making",
	Why: "Bentonite, rhassoul and hectorite take up water between their sheets for days. A mask that is right when it leaves the bowl is stiff on the third day " +
		"and will not leave the tube on the tenth; water that polyols hold swells it less, and later.",
	Since:    "0.1",
	Severity: levigate.Advice,
	After:    []string{"C02"},
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Compares: Exact,
	Messages: map[string]Message{
		"swells": {
			Text: "{clay:1} g of swelling clay ({names}) in {water:1} g of water: it thickens for days.",
			Help: "swell it in its water the day before; judge the consistency after 24 h, 48 h and a week, and only then the pack",
		},
	},
	Check: func(s *Subject, r *Report) {
		clay := amounts(s, "smectite")
		if grams(clay) < swellsFrom || s.Continuous != levigate.PolarContinuous {
			return
		}
		if water := s.Water(); water >= swellsIn {
			r.Broken(Note{Say: "swells", At: atLines(linesOf(clay)), Args: Args{"clay": grams(clay), "names": namesOf(clay), "water": water}})
		}
	},
	Examples: []Example{
		{Name: "a mask with bentonite", Given: sheet(aqua("45"), polyol("20", "Glycerin"), line("30", "Kaolin", of("Kaolin", 100, "clay")), line("5", "Bentonite", of("Bentonite", 100, "smectite"))), Want: "M18 advice: 5.0 g of swelling clay (Bentonite) in 45.0 g of water: it thickens for days.\n" +
			"  help: swell it in its water the day before; judge the consistency after 24 h, 48 h and a week, and only then the pack\n" +
			"  at: lines/3\n", Shows: Over},
		{Name: "two grams in five of water", Given: sheet(aqua("5"), polyol("93", "Glycerin"), line("2", "Bentonite", of("Bentonite", 100, "smectite"))), Want: "M18 advice: 2.0 g of swelling clay (Bentonite) in 5.0 g of water: it thickens for days.\n" +
			"  help: swell it in its water the day before; judge the consistency after 24 h, 48 h and a week, and only then the pack\n" +
			"  at: lines/2\n", Shows: On},
		{Name: "a trace that keeps grains afloat", Given: sheet(aqua("60"), line("1.9", "Bentonite", of("Bentonite", 100, "smectite"))), Shows: Under},
		{Name: "hardly any water", Given: sheet(aqua("4.9"), polyol("87", "Glycerin"), line("8", "Bentonite", of("Bentonite", 100, "smectite")))},
		{Name: "in oil it does not swell", Given: sheet(oily(), aqua("6"), oil("80", "Sunflower oil"), line("14", "Bentonite", of("Bentonite", 100, "smectite")))},
	},
})
