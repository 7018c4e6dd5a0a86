package rules

import (
	"levigate"
	"levigate/cite"
)

// weakFrom is the share of such oils from which a blend smells of them, % w/w.
const weakFrom = 1.0

// enough is the antioxidant from which it does something for the whole formula,
// % w/w: what keeps a premix of retinol does not keep the hemp oil beside it.
const enough = 0.02

var _ = register(Rule{
	ID:    "M13",
	Name:  "weakest-oil",
	Title: "An oil that goes rancid first, and hardly any antioxidant",
	Why: "A blend keeps as long as its weakest oil in its oldest lot. Oils rich in linoleic or linolenic acid take up oxygen first, " +
		"and what they turn into is smelt at a fraction of a per cent. An antioxidant puts it off and does not turn it back.",
	Since:    "0.1",
	Severity: levigate.Advice,
	After:    []string{"C02"},
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Compares: Exact,
	Messages: map[string]Message{
		"weak": {
			Text: "Goes rancid first, and hardly any antioxidant is in the formula: {most:1 %}.",
			Help: "a little tocopherol, fresh lots with their peroxide value written down, little air in the pack; or a high-oleic oil in its place",
		},
	},
	Check: func(s *Subject, r *Report) {
		if !s.holds("unsaturated-oil") || grams(amounts(s, "antioxidant")) >= enough {
			return
		}
		weak := amounts(s, "unsaturated-oil")
		if grams(weak) < weakFrom {
			return
		}
		var most []Part
		for _, i := range linesOf(weak) {
			most = append(most, Part{s.Name(i), s.Grams(i)})
		}
		r.Broken(Note{Say: "weak", At: atLines(linesOf(weak)), Args: Args{"most": most}})
	},
	Examples: []Example{
		{Name: "a rosehip serum", Given: sheet(oily(), oil("80", "Jojoba oil"), line("20", "Rosehip seed oil", of("Rosa Canina Seed Oil", 100, "unsaturated-oil"))), Want: "M13 advice: Goes rancid first, and hardly any antioxidant is in the formula: Rosehip seed oil (20.0 %).\n" +
			"  help: a little tocopherol, fresh lots with their peroxide value written down, little air in the pack; or a high-oleic oil in its place\n" +
			"  at: lines/1\n", Shows: Over},
		{Name: "one per cent", Given: sheet(oil("99", "Jojoba oil"), line("1", "Rosehip seed oil", is("unsaturated-oil"))), Want: "M13 advice: Goes rancid first, and hardly any antioxidant is in the formula: Rosehip seed oil (1.0 %).\n" +
			"  help: a little tocopherol, fresh lots with their peroxide value written down, little air in the pack; or a high-oleic oil in its place\n" +
			"  at: lines/1\n", Shows: On},
		{Name: "a trace", Given: sheet(oil("99.1", "Jojoba oil"), line("0.9", "Rosehip seed oil", is("unsaturated-oil"))), Shows: Under},
		{Name: "what another raw material brings for itself", Given: sheet(line("45", "Hemp seed oil", is("unsaturated-oil")), line("0.3", "Retinyl palmitate in oil", of("Tocopherol", 1, "antioxidant"))), Want: "M13 advice: Goes rancid first, and hardly any antioxidant is in the formula: Hemp seed oil (45.0 %).\n" +
			"  help: a little tocopherol, fresh lots with their peroxide value written down, little air in the pack; or a high-oleic oil in its place\n" +
			"  at: lines/0\n"},
		{Name: "a fiftieth of a per cent of it", Given: sheet(line("20", "Rosehip seed oil", is("unsaturated-oil")), line("0.02", "Tocopherol", of("Tocopherol", 100, "antioxidant")))},
		{Name: "not quite so much", Given: sheet(line("20", "Rosehip seed oil", is("unsaturated-oil")), line("0.018", "Tocopherol", of("Tocopherol", 100, "antioxidant"))), Want: "M13 advice: Goes rancid first, and hardly any antioxidant is in the formula: Rosehip seed oil (20.0 %).\n" +
			"  help: a little tocopherol, fresh lots with their peroxide value written down, little air in the pack; or a high-oleic oil in its place\n" +
			"  at: lines/0\n"},
		{Name: "with tocopherol", Given: sheet(line("20", "Rosehip seed oil", is("unsaturated-oil")), line("0.3", "Mixed tocopherols", of("Tocopherol", 70, "antioxidant")))},
	},
})
