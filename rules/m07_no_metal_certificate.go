package rules

import (
	"levigate"
	"levigate/cite"
)

// metalsFrom is the share of clay from which its metals are asked for, % w/w.
const metalsFrom = 1.0

var _ = register(Rule{
	ID:    "M07",
	Name:  "no-metal-certificate",
	Title: "Clay, and its heavy metals asked for",
	Why: "Clay is dug out of the ground and holds what the ground holds: lead, arsenic, nickel, more or less of it from pit to pit. " +
		"Heavy metals may be in a cosmetic only as traces nobody can avoid, and it is the certificate of the lot that shows it. The assessor asks for it.",
	Since:    "0.1",
	Severity: levigate.Advice,
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Compares: Exact,
	Messages: map[string]Message{
		"ask": {
			Text: "Nothing is on file about the lead, arsenic and other heavy metals in {most:1 %}.",
			Help: "ask the supplier for the heavy metals of the lot, in mg per kg, and keep the certificate with the product's file",
		},
	},
	Check: func(s *Subject, r *Report) {
		clays := append(amounts(s, "clay"), amounts(s, "organoclay")...)
		if grams(clays) < metalsFrom {
			return
		}
		lines := linesOf(clays)
		var most []Part
		for _, i := range lines {
			most = append(most, Part{s.Name(i), s.Grams(i)})
		}
		r.Broken(Note{Say: "ask", At: atLines(lines), Args: Args{"most": most}})
	},
	Examples: []Example{
		{Name: "an organoclay", Given: sheet(oily(), oil("97", "Castor oil"), line("3", "Hectorite gellant", of("Disteardimonium Hectorite", 100, "organoclay"))), Want: "M07 advice: Nothing is on file about the lead, arsenic and other heavy metals in Hectorite gellant (3.0 %).\n" +
			"  help: ask the supplier for the heavy metals of the lot, in mg per kg, and keep the certificate with the product's file\n" +
			"  at: lines/1\n"},
		{Name: "two clays", Given: sheet(line("28", "Kaolin, fine white", of("Kaolin", 100, "clay")), line("4", "Bentonite", of("Bentonite", 100, "clay", "smectite"))), Want: "M07 advice: Nothing is on file about the lead, arsenic and other heavy metals in Kaolin, fine white (28.0 %) and Bentonite (4.0 %).\n" +
			"  help: ask the supplier for the heavy metals of the lot, in mg per kg, and keep the certificate with the product's file\n" +
			"  at: lines/0 lines/1\n", Shows: Over},
		{Name: "one per cent", Given: sheet(line("1", "Green clay", is("clay"))), Want: "M07 advice: Nothing is on file about the lead, arsenic and other heavy metals in Green clay (1.0 %).\n" +
			"  help: ask the supplier for the heavy metals of the lot, in mg per kg, and keep the certificate with the product's file\n" +
			"  at: lines/0\n", Shows: On},
		{Name: "a little to thicken", Given: sheet(line("0.9", "Bentonite", is("clay"))), Shows: Under},
		{Name: "starch", Given: sheet(line("20", "Maize starch", is("starch")))},
	},
})
