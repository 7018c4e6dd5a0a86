package rules

import (
	"levigate"
	"levigate/cite"
)

var _ = register(Rule{
	ID:    "M05",
	Name:  "assessor-notes",
	Title: "Lanolin, nuts, honey, milk, soya, wheat: notes for the assessor",
	Why: "Some natural raw materials have a history with sensitive skin or with spores. None of this forbids them; " +
		"the person who assesses the product, and some who buy it, need to know.",
	Since:    "0.1",
	Severity: levigate.Advice,
	Sources:  []cite.Ref{{Key: "trade-practice"}, {Key: "eu-annexes", At: "III/307"}},
	Messages: map[string]Message{
		"lanolin": {
			Text: "{names}: lanolin sensitises some people.",
			Help: "note it for the assessor; ask the supplier for a grade low in free alcohols and pesticides",
		},
		"nut": {
			Text: "From a nut or an almond: {names}.",
			Help: "note it for the assessor, and tell people with a nut allergy; ask the supplier whether protein was looked for",
		},
		"honey": {
			Text: "{names}: honey may carry spores, which low water activity does not kill, and traces of pollen and propolis.",
			Help: "note it for the assessor; ask for a heated or filtered grade; not for children under 1 year",
		},
		"milk": {
			Text: "From milk: {names}.",
			Help: "note it for the assessor, and tell people with a milk allergy; milk spoils fast once it is wet",
		},
		"soya": {
			Text: "From soya: {names}.",
			Help: "note it for the assessor; ask the supplier whether protein was looked for",
		},
		"wheat": {
			Text: "From wheat: {names}.",
			Help: "note it for the assessor, and say it to people who avoid wheat; hydrolysed wheat protein has a limit on the size of its peptides in the EU, so ask for the certificate",
		},
	},
	Check: func(s *Subject, r *Report) {
		for _, class := range noted {
			lines := s.Lines(func(_ int, m *levigate.Material) bool { return m.Is(class) })
			if len(lines) > 0 {
				r.Broken(Note{Say: class, Row: class, At: atLines(lines), Args: Args{"names": s.Names(lines)}})
			}
		}
	},
	Examples: []Example{
		{
			Name:  "lanolin in a balm",
			Given: sheet(oily(), line("8", "Lanolin, anhydrous", is("lanolin"))),
			Want: "M05/lanolin advice: Lanolin, anhydrous: lanolin sensitises some people.\n" +
				"  help: note it for the assessor; ask the supplier for a grade low in free alcohols and pesticides\n" +
				"  at: lines/0\n",
		},
		{
			Name:  "honey and ground shell",
			Given: sheet(line("12", "Honey, runny", of("Mel", 100, "honey")), line("7", "Walnut shell powder", is("nut"))),
			Want: "M05/nut advice: From a nut or an almond: Walnut shell powder.\n" +
				"  help: note it for the assessor, and tell people with a nut allergy; ask the supplier whether protein was looked for\n" +
				"  at: lines/1\n" +
				"M05/honey advice: Honey, runny: honey may carry spores, which low water activity does not kill, and traces of pollen and propolis.\n" +
				"  help: note it for the assessor; ask for a heated or filtered grade; not for children under 1 year\n" +
				"  at: lines/0\n",
		},
		{
			Name:  "milk, soya and wheat",
			Given: sheet(line("2", "Goat milk powder", is("milk")), line("5", "Soya bean oil", is("soya")), line("1", "Wheat protein", is("wheat"))),
			Want: "M05/milk advice: From milk: Goat milk powder.\n" +
				"  help: note it for the assessor, and tell people with a milk allergy; milk spoils fast once it is wet\n" +
				"  at: lines/0\n" +
				"M05/soya advice: From soya: Soya bean oil.\n" +
				"  help: note it for the assessor; ask the supplier whether protein was looked for\n" +
				"  at: lines/1\n" +
				"M05/wheat advice: From wheat: Wheat protein.\n" +
				"  help: note it for the assessor, and say it to people who avoid wheat; hydrolysed wheat protein has a limit on the size of its peptides in the EU, so ask for the certificate\n" +
				"  at: lines/2\n",
		},
		{Name: "none of them", Given: sheet(line("100", "Sunflower oil"))},
	},
})

// noted lists the classes, which are the rows of the rule and its message keys.
var noted = []string{"lanolin", "nut", "honey", "milk", "soya", "wheat"}
