package rules

import (
	"slices"

	"levigate"
	"levigate/cite"
)

var _ = register(Rule{
	ID:    "W22",
	Name:  "preservative-in-oil",
	Title: "A preservative, and oil surrounds everything",
	Why: "Microbes live in water, and a preservative works in the water they live in. In a balm it is dissolved in the oil or lies in it as grains; " +
		"little of it goes over into a drop that falls in. Some of the trade add one all the same and some call it pointless: only a test with water in the product answers.",
	Since:    "0.1",
	Severity: levigate.Advice,
	After:    []string{"C02"},
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Messages: map[string]Message{
		"in-oil": {
			Text: "There is no water phase for {names} to work in: what is added stays in the oil.",
			Help: "say in the file what it is there for; keep water out by the pack, and have a laboratory add water to the test if wet hands go in",
		},
		"grains": {
			Text: "Not soluble in oil: {names}. Without a water phase it lies there as grains.",
			Help: "leave it out, or take another way: keep water out by the pack",
		},
	},
	Check: func(s *Subject, r *Report) {
		if s.Continuous != levigate.OilContinuous {
			return
		}
		lines := s.Lines(func(i int, m *levigate.Material) bool { return m.HasRole("preservative") && s.Grams(i) > 0 })
		grains := slices.DeleteFunc(slices.Clone(lines), func(i int) bool {
			m := s.Formula.Lines[i].Match.Material
			return !m.Is("electrolyte") || m.Form == levigate.Liquid
		})
		lines = slices.DeleteFunc(lines, func(i int) bool { return slices.Contains(grains, i) })
		if len(lines) > 0 {
			r.Broken(Note{Say: "in-oil", Row: "in-oil", At: atLines(lines), Args: Args{"names": s.Names(lines)}})
		}
		if len(grains) > 0 {
			r.Broken(Note{Say: "grains", Row: "grains", At: atLines(grains), Args: Args{"names": s.Names(grains)}})
		}
	},
	Examples: []Example{
		{
			Name: "two of them in a balm",
			Given: sheet(oily(), line("98.7", "Shea butter"), line("1", "Preservative blend PE 90", role("preservative"), form(levigate.Liquid)),
				line("0.3", "Potassium sorbate, granules", of("Potassium Sorbate", 100, "electrolyte"), role("preservative"), form(levigate.Grains))),
			Want: "W22/in-oil advice: There is no water phase for Preservative blend PE 90 to work in: what is added stays in the oil.\n" +
				"  help: say in the file what it is there for; keep water out by the pack, and have a laboratory add water to the test if wet hands go in\n" +
				"  at: lines/1\n" +
				"W22/grains advice: Not soluble in oil: Potassium sorbate, granules. Without a water phase it lies there as grains.\n" +
				"  help: leave it out, or take another way: keep water out by the pack\n" +
				"  at: lines/2\n",
		},
		{Name: "an antioxidant is none", Given: sheet(oily(), line("99.5", "Shea butter"), line("0.5", "Mixed tocopherols", role("antioxidant")))},
		{Name: "a lotion", Given: sheet(aqua("99"), line("1", "Preservative blend PE 90", role("preservative")))},
	},
})
