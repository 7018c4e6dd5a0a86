package rules

import (
	"levigate"
	"levigate/cite"
)

// disturbsFrom is the share of volatile matter from which a reading is in
// doubt, g per 100 g.
const disturbsFrom = 0.5

var _ = register(Rule{
	ID:    "W10",
	Name:  "volatile-disturbs-meter",
	Title: "A volatile that a water-activity meter may take for water",
	Why: "A chilled mirror fogs with whatever condenses first, and an alcohol or an essential oil does; some capacitive cells drift with it for hours. " +
		"The reading is then too high or never settles. A tunable-laser cell, or a filter the meter's maker names, sees water alone.",
	Since:    "0.1",
	Severity: levigate.Advice,
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Compares: Exact,
	Messages: map[string]Message{
		"read": {
			Text: "{volatile:1} g of volatile matter ({names}), and the activity was read: the meter may have taken it for water.",
			Help: "ask which sensor it was; read a sample made without the volatile beside it",
		},
		"before": {
			Text: "{volatile:1} g of volatile matter ({names}): not every water-activity meter sees past it.",
			Help: "ask the laboratory for its sensor before you send a sample, or send one made without it as well",
		},
	},
	Check: func(s *Subject, r *Report) {
		f := s.Activity()
		if f == nil {
			return
		}
		found := amounts(s, "volatile")
		found = append(found, amounts(s, "essential-oil")...)
		if grams(found) < disturbsFrom {
			return
		}
		n := Note{Say: "before", At: atLines(linesOf(found)), Args: Args{"volatile": grams(found), "names": namesOf(found)}}
		for i := range s.Readings {
			if s.Readings[i].Property == f.ID {
				n.Say = "read"
			}
		}
		if n.Say == "read" || s.Formula.Claimed("low-water") {
			r.Broken(n)
		}
	},
	Examples: []Example{
		{Name: "read with alcohol in it", Given: sheet(activity(0.4, 0.38, 0.42), line("5", "Ethanol", of("Alcohol", 100, "volatile")), reading("R1", 0.4, 0.01)), Want: "W10 advice: 5.0 g of volatile matter (Alcohol), and the activity was read: the meter may have taken it for water.\n" +
			"  help: ask which sensor it was; read a sample made without the volatile beside it\n" +
			"  at: lines/0\n", Shows: Over},
		{Name: "a low-water gel with orange oil", Given: sheet(claim("low-water"), activity(0.4, 0.38, 0.42), line("0.5", "Orange oil", of("Citrus Aurantium Dulcis Peel Oil", 100, "essential-oil"))), Want: "W10 advice: 0.5 g of volatile matter (Citrus Aurantium Dulcis Peel Oil): not every water-activity meter sees past it.\n" +
			"  help: ask the laboratory for its sensor before you send a sample, or send one made without it as well\n" +
			"  at: lines/0\n", Shows: On},
		{Name: "a trace", Given: sheet(claim("low-water"), activity(0.4, 0.38, 0.42), line("0.45", "Orange oil", of("Citrus Aurantium Dulcis Peel Oil", 100, "essential-oil"))), Shows: Under},
		{Name: "a toner nobody reads", Given: sheet(activity(0.97, 0.96, 0.98), line("5", "Ethanol", of("Alcohol", 100, "volatile")))},
		{Name: "a serum has no activity", Given: sheet(oily(), claim("low-water"), line("1", "Orange oil", is("essential-oil")))},
	},
})
