package rules

import (
	"levigate"
	"levigate/cite"
)

// grainFrom is the share of such butters from which grain is seen, % w/w.
const grainFrom = 5.0

var _ = register(Rule{
	ID:    "M12",
	Name:  "grainy-butter",
	Title: "A butter that turns grainy when it cools slowly",
	Why: "Shea, cocoa and coconut hold fats that melt far apart. Cooled slowly the high ones crystallise first and grow to grains one feels; " +
		"they show after days to weeks, at a cool room's temperature, and more so after scaling up, because a large batch cools slowly.",
	Since:    "0.1",
	Severity: levigate.Advice,
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Compares: Exact,
	Messages: map[string]Message{
		"grain": {
			Text: "May turn grainy when it cools slowly: {most:1 %}.",
			Help: "melt it through, pour at a low temperature, cool fast in small portions, and look for grain after a day and after four weeks; try it at the size of the real batch",
		},
	},
	Check: func(s *Subject, r *Report) {
		if s.Continuous != levigate.OilContinuous {
			return
		}
		butters := amounts(s, "grainy")
		if grams(butters) < grainFrom {
			return
		}
		var most []Part
		for _, a := range butters {
			most = append(most, Part{s.Name(a.line), a.grams})
		}
		r.Broken(Note{Say: "grain", At: atLines(linesOf(butters)), Args: Args{"most": most}})
	},
	Examples: []Example{
		{Name: "a balm", Given: sheet(oily(), oil("82", "Castor oil"), line("18", "Shea butter, refined", of("Butyrospermum Parkii Butter", 100, "butter", "grainy"))), Want: "M12 advice: May turn grainy when it cools slowly: Shea butter, refined (18.0 %).\n" +
			"  help: melt it through, pour at a low temperature, cool fast in small portions, and look for grain after a day and after four weeks; try it at the size of the real batch\n" +
			"  at: lines/1\n", Shows: Over},
		{Name: "five per cent", Given: sheet(oily(), oil("95", "Castor oil"), line("5", "Cocoa butter", is("grainy"))), Want: "M12 advice: May turn grainy when it cools slowly: Cocoa butter (5.0 %).\n" +
			"  help: melt it through, pour at a low temperature, cool fast in small portions, and look for grain after a day and after four weeks; try it at the size of the real batch\n" +
			"  at: lines/1\n", Shows: On},
		{Name: "a touch of it", Given: sheet(oily(), oil("98", "Castor oil"), line("2", "Cocoa butter", is("grainy"))), Shows: Under},
		{Name: "in the drops of a lotion", Given: sheet(aqua("90"), line("10", "Shea butter", is("grainy")))},
	},
})
