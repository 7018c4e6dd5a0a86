package rules

import (
	"slices"

	"levigate"
	"levigate/cite"
)

// Traces that need no emulsifier, and powder that may need one to be wetted,
// % w/w.
const (
	traceOf    = 0.1
	wetsPowder = 1.0
)

var _ = register(Rule{
	ID:    "S03",
	Name:  "nothing-to-emulsify",
	Title: "An emulsifier with nothing to emulsify",
	Why: "An emulsifier sits between oil and water. Without the one or the other it is a dear and sticky filler, sometimes a foam, " +
		"and mostly the remains of another formula. In a product that is rinsed off the water comes with the rinsing; then it has its work.",
	Since:    "0.1",
	Severity: levigate.Advice,
	After:    []string{"C02"},
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Messages: map[string]Message{
		"no-oil": {
			Text: "Nothing for {names} to emulsify: there is no oil.",
			Help: "leave it out, or say in the notes what it does here: a solubiliser, a foam",
		},
		"no-polar": {
			Text: "Nothing for {names} to emulsify: there is neither water nor polyol, and the product stays on the skin.",
			Help: "leave it out, or say in the notes what it does here",
		},
	},
	Check: func(s *Subject, r *Report) {
		lines := s.Lines(func(i int, m *levigate.Material) bool {
			return m.HasRole("emulsifier") && !m.HasRole("thickener") && !m.HasRole("base") && s.Grams(i) > 0
		})
		if len(lines) == 0 {
			return
		}
		p := s.poured()
		n := Note{At: atLines(lines), Args: Args{"names": s.Names(lines)}}
		switch oils := s.declared(levigate.Oil); {
		case oils < traceOf && s.Continuous == levigate.PolarContinuous:
			n.Say = "no-oil"
			r.Broken(n)
		case s.Continuous == levigate.OilContinuous && p.polarGrams() < traceOf && s.declared(levigate.Powder) < wetsPowder &&
			slices.Equal(UsesOf(s.Formula.Product), []string{leaveOn}):
			n.Say = "no-polar"
			r.Broken(n)
		}
	},
	Examples: []Example{
		{Name: "a toner", Given: sheet(aqua("95"), polyol("4", "Glycerin"), emulsifier("1", "Polyglyceryl-10 laurate")), Want: "S03 advice: Nothing for Polyglyceryl-10 laurate to emulsify: there is no oil.\n" +
			"  help: leave it out, or say in the notes what it does here: a solubiliser, a foam\n" +
			"  at: lines/2\n"},
		{Name: "a balm left on", Given: sheet(oily(), product("hand-cream"), oil("95", "Jojoba oil"), emulsifier("5", "Sorbitan stearate")), Want: "S03 advice: Nothing for Sorbitan stearate to emulsify: there is neither water nor polyol, and the product stays on the skin.\n" +
			"  help: leave it out, or say in the notes what it does here\n" +
			"  at: lines/1\n"},
		{Name: "a cleansing balm", Given: sheet(oily(), product("make-up-remover"), oil("85", "Jojoba oil"), emulsifier("15", "Polyglyceryl-10 laurate"))},
		{Name: "a balm with pigment", Given: sheet(oily(), product("foundation"), oil("85", "Castor oil"), line("12", "Iron oxide", of("CI 77491", 100), kind(levigate.Powder)), emulsifier("3", "Polyglyceryl-3 diisostearate"))},
		{Name: "a lotion", Given: sheet(aqua("75"), oil("20", "Sunflower oil"), emulsifier("5", "Polysorbate 60"))},
	},
})
