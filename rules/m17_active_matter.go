package rules

import (
	"levigate"
	"levigate/cite"
)

var _ = register(Rule{
	ID:    "M17",
	Name:  "active-matter",
	Title: "Cleansers weighed as supplied, and what they bring",
	Why: "A cleanser comes as a solution of a third to a half. Levels in books and on suppliers' sheets are sometimes of the solution and sometimes of " +
		"its active matter; a formula taken over from one to the other is three times too strong or too weak, and its water goes uncounted.",
	Since:    "0.1",
	Severity: levigate.Advice,
	After:    []string{"C02"},
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Compares: Exact,
	Messages: map[string]Message{
		"brings": {
			Text: "In {written:1} g of {names} are {active:1} g of active matter and {water:1} g of water.",
			Help: "compare like with like: active matter with active matter, and count its water with the rest",
		},
	},
	Check: func(s *Subject, r *Report) {
		var lines []int
		var written, active, water float64
		for i, m := range s.Materials() {
			g := s.Grams(i)
			if !m.HasRole("cleanser") || g == 0 || m.Water.Typical < suppliedWet {
				continue
			}
			lines = append(lines, i)
			written += g
			water += g * m.Water.Typical / 100
			for j := range m.Declared {
				if share := &m.Declared[j]; share.Substance == nil || share.Substance.Kind == levigate.Other {
					active += g * share.Percent.Typical / 100
				}
			}
		}
		if len(lines) > 0 {
			r.Broken(Note{Say: "brings", At: atLines(lines), Args: Args{"names": s.Names(lines), "written": written, "active": active, "water": water}})
		}
	},
	Examples: []Example{
		{
			Name:  "a hand wash",
			Given: sheet(aqua("60"), line("30", "Decyl glucoside, 52 %", of("Aqua", 48), of("Decyl Glucoside", 52), water(48), role("cleanser"))),
			Want: "M17 advice: In 30.0 g of Decyl glucoside, 52 % are 15.6 g of active matter and 14.4 g of water.\n" +
				"  help: compare like with like: active matter with active matter, and count its water with the rest\n" +
				"  at: lines/1\n", Shows: Over,
		},
		{
			Name:  "one with a fifth of water",
			Given: sheet(line("10", "Paste", of("Aqua", 20), of("Sodium Laureth Sulfate", 80), water(20), role("cleanser"))),
			Want: "M17 advice: In 10.0 g of Paste are 8.0 g of active matter and 2.0 g of water.\n" +
				"  help: compare like with like: active matter with active matter, and count its water with the rest\n" +
				"  at: lines/0\n", Shows: On,
		},
		{
			Name: "two of them",
			Given: sheet(aqua("70"), line("12", "Coco-glucoside, 52 %", of("Aqua", 48), of("Coco-Glucoside", 52), water(48), role("cleanser")),
				line("18", "Betaine, 30 %", of("Aqua", 70), of("Cocamidopropyl Betaine", 30), water(70), role("cleanser"))),
			Want: "M17 advice: In 30.0 g of Coco-glucoside, 52 % and Betaine, 30 % are 11.6 g of active matter and 18.4 g of water.\n" +
				"  help: compare like with like: active matter with active matter, and count its water with the rest\n" +
				"  at: lines/1 lines/2\n",
		},
		{Name: "a cleanser in powder", Given: sheet(line("20", "Isethionate powder", of("Sodium Cocoyl Isethionate", 80), water(19), role("cleanser"))), Shows: Under},
	},
})

// suppliedWet is the water held from which a cleanser counts as a solution, g
// per 100 g.
const suppliedWet = 20.0
