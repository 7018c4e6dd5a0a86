package rules

import (
	"levigate"
	"levigate/cite"
)

var _ = register(Rule{
	ID:    "C13",
	Name:  "outside-usual-use",
	Title: "More or less of a raw material than is usual",
	Why: "The range a raw material is usually put in at is what its makers found to work: below it it mostly does nothing for its price, above it it " +
		"grows sticky, irritates, falls out or upsets the rest. The range is no limit in law; a slipped decimal point shows here first. " +
		"What a product is made of may go higher: the line that fills up, the fats of a balm, the powders and salts of a dry mix.",
	Since:    "0.1",
	Severity: levigate.Advice,
	Sources:  []cite.Ref{{Key: "trade-practice"}, {Key: "recalled"}},
	Compares: Exact,
	Messages: map[string]Message{
		"more": {
			Text: "{name}: {percent} %; up to {high} % is usual.",
			Help: "look for a slipped decimal point; if it is meant, say why in the notes",
		},
		"less": {
			Text: "{name}: {percent} %; from {low} % is usual.",
			Help: "take what it needs to do its work, or leave it out",
		},
	},
	Check: func(s *Subject, r *Report) {
		for i, m := range s.Materials() {
			g := s.Grams(i)
			if !m.Use.Known() || g == 0 {
				continue
			}
			n := Note{At: []string{atLine(i)}, Args: Args{"name": s.Name(i), "percent": g}}
			switch {
			case g > m.Use.High && !s.body(i, m):
				n.Say, n.Args["high"] = "more", m.Use.High
				r.Broken(n)
			case g < m.Use.Low:
				n.Say, n.Args["low"] = "less", m.Use.Low
				r.Broken(n)
			}
		}
	},
	Examples: []Example{
		{Name: "ten times the gum", Given: sheet(aqua("97"), line("3", "Xanthan gum", usual(0.2, 1))), Want: "C13 advice: Xanthan gum: 3 %; up to 1 % is usual.\n" +
			"  help: look for a slipped decimal point; if it is meant, say why in the notes\n" +
			"  at: lines/1\n", Shows: Over},
		{Name: "a trace of it", Given: sheet(aqua("99.9"), line("0.1", "Xanthan gum", usual(0.2, 1))), Want: "C13 advice: Xanthan gum: 0.1 %; from 0.2 % is usual.\n" +
			"  help: take what it needs to do its work, or leave it out\n" +
			"  at: lines/1\n"},
		{Name: "as much as is usual", Given: sheet(aqua("99"), line("1", "Xanthan gum", usual(0.2, 1))), Shows: On},
		{Name: "within the range", Given: sheet(aqua("99.5"), line("0.5", "Xanthan gum", usual(0.2, 1))), Shows: Under},
		{Name: "still at nothing", Given: sheet(aqua("100"), line("0", "Xanthan gum", usual(0.2, 1)))},
		{Name: "the line that fills up", Given: sheet(line("84", "Propanediol", usual(2, 20)), filledUp(), line("16", "Ascorbic acid"))},
		{Name: "a balm is made of its fats", Given: sheet(oily(), line("60", "Shea butter", of("Butyrospermum Parkii Butter", 100, "butter"), usual(2, 50)))},
		{Name: "a dry mask is made of its clay", Given: sheet(dry(), line("75", "Kaolin", usual(2, 40)))},
		{
			Name:  "a scent is never what a balm is made of",
			Given: sheet(oily(), line("10", "Lavender oil", of("Lavandula Angustifolia Oil", 100, "essential-oil"), usual(0.1, 1))),
			Want: "C13 advice: Lavender oil: 10 %; up to 1 % is usual.\n" +
				"  help: look for a slipped decimal point; if it is meant, say why in the notes\n" +
				"  at: lines/0\n",
		},
		{Name: "nothing is on file", Given: sheet(aqua("60"), line("40", "Gel base"))},
	},
})

// body reports whether a product is made of a raw material: usual ranges are of
// what goes into lotions and gels, and say nothing of the rest of a balm.
func (s *Subject) body(line int, m *levigate.Material) bool {
	switch {
	case s.Formula.Lines[line].QS:
		return true
	case s.Continuous == levigate.OilContinuous:
		return m.Is("plant-oil") || m.Is("butter") || m.Is("ester-oil") || m.Is("hydrocarbon")
	case s.Continuous == levigate.NoLiquid:
		return m.Form != levigate.Liquid
	}
	return false
}
