package rules

import (
	"levigate"
	"levigate/cite"
)

var _ = register(Rule{
	ID:    "M01",
	Name:  "dust",
	Title: "Powders that raise dust",
	Why: "Charcoal, clays, starches, gums and powdered sugar esters are fine enough to be breathed in, and a cloud of most organic powders can ignite. " +
		"The hazard is in the weighing and sieving, not in the finished gel.",
	Since:    "0.1",
	Severity: levigate.Advice,
	Sources:  []cite.Ref{{Key: "dust-pages"}, {Key: "trade-practice"}},
	Messages: map[string]Message{
		"dust": {
			Text: "Raising dust when weighed and sieved: {names}.",
			Help: "extraction and a respirator, no ignition and no fan; tip slowly, lid on, wet out early",
		},
	},
	Check: func(s *Subject, r *Report) {
		lines := s.Lines(func(_ int, m *levigate.Material) bool { return m.Warns("dust") })
		if len(lines) > 0 {
			r.Broken(Note{Say: "dust", At: atLines(lines), Args: Args{"names": s.Names(lines)}})
		}
	},
	Examples: []Example{
		{
			Name:  "clay and starch, starch twice and once by its code",
			Given: sheet(line("8", "Kaolin", caution("dust")), line("2", "Maize starch", caution("dust"), code("STA-MZ")), line("1", "Maize starch", caution("dust"))),
			Want: "M01 advice: Raising dust when weighed and sieved: Kaolin and Maize starch.\n" +
				"  help: extraction and a respirator, no ignition and no fan; tip slowly, lid on, wet out early\n" +
				"  at: lines/0 lines/1 lines/2\n",
		},
		{Name: "liquids", Given: sheet(line("50", "Glycerin"), line("50", "Sunflower oil"))},
	},
})
