package rules

import (
	"slices"

	"levigate"
	"levigate/cite"
)

// usualScent is the most scent that is usual in a product left on, % w/w.
const usualScent = 1.0

var _ = register(Rule{
	ID:    "M11",
	Name:  "scent-level",
	Title: "More scent than is usual in a product left on",
	Why: "Perfume and essential oils are the commonest cause of contact allergy to cosmetics, and more of them is the commonest wish of a tester. " +
		"In what stays on the skin 1 % is high by common practice. No legal limit stands behind it: the certificate of the scent and the assessor say what each may come to.",
	Since:    "0.1",
	Severity: levigate.Advice,
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Compares: Exact,
	Messages: map[string]Message{
		"high": {
			Text: "{sum:2} % of scent in a product left on, above the {limit:0} % that is usual: {most:2 %}.",
			Help: "compare with the certificate of each for this kind of product, or take less",
		},
	},
	Check: func(s *Subject, r *Report) {
		p := s.Formula.Product
		if slices.Contains([]string{"perfume", "eau-de-toilette", "aftershave", "deodorant", "deodorant-spray"}, p) ||
			!slices.Equal(UsesOf(p), []string{leaveOn}) {
			return
		}
		scents := amounts(s, "essential-oil")
		for _, f := range amounts(s, "fragrance") {
			if !slices.ContainsFunc(scents, func(e amount) bool { return e.line == f.line && e.name == f.name }) {
				scents = append(scents, f)
			}
		}
		const grain = 1e-9
		if sum := grams(scents); sum > usualScent+grain {
			var most []Part
			for _, a := range scents {
				most = append(most, Part{s.Name(a.line), a.grams})
			}
			r.Broken(Note{Say: "high", At: atLines(linesOf(scents)), Args: Args{"sum": sum, "limit": usualScent, "most": most}})
		}
	},
	Examples: []Example{
		{
			Name: "a scented balm", Given: sheet(product("hand-cream"), line("98", "Shea butter"), line("1.5", "Lavender oil", of("Lavandula Angustifolia Oil", 100, "essential-oil")), line("0.5", "Perfume oil", of("Parfum", 100, "fragrance"))),
			Want: "M11 advice: 2.00 % of scent in a product left on, above the 1 % that is usual: Lavender oil (1.50 %) and Perfume oil (0.50 %).\n" +
				"  help: compare with the certificate of each for this kind of product, or take less\n" +
				"  at: lines/1 lines/2\n", Shows: Over,
		},
		{Name: "one per cent", Given: sheet(product("hand-cream"), line("1", "Lavender oil", is("essential-oil"))), Shows: On},
		{Name: "a lotion", Given: sheet(product("hand-cream"), line("0.1", "Lavender oil", is("essential-oil"))), Shows: Under},
		{Name: "rinsed off", Given: sheet(product("hand-wash"), line("1.5", "Sweet orange oil", is("essential-oil")))},
		{Name: "a perfume", Given: sheet(product("perfume"), line("18", "Perfume oil", is("fragrance")))},
	},
})
