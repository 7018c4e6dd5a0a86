package rules

import (
	"levigate"
	"levigate/cite"
)

// oneKind is the share of a phase from which it is of one kind, and what
// dissolves in the other is out of place in it.
const oneKind = 0.8

var _ = register(Rule{
	ID:    "C14",
	Name:  "out-of-its-phase",
	Title: "A liquid in a phase it does not mix with",
	Why: "What is weighed together has to go together. Glycerin in the oil beaker lies at its bottom and is left there when it is poured off; " +
		"an oil in the polyol phase goes in all at once instead of being fed slowly, and the gel does not take it up.",
	Since:    "0.1",
	Severity: levigate.Advice,
	After:    []string{"C09"},
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Messages: map[string]Message{
		"polar-in-oil": {
			Text: "Phase {phase} is oil, and {name} does not mix with oil.",
			Help: "move it to the phase of water and polyols, or say in the making how it is taken up",
		},
		"oil-in-polar": {
			Text: "Phase {phase} is water and polyols, and {name} is an oil.",
			Help: "move it to the oil phase, which is fed in slowly",
		},
	},
	Check: func(s *Subject, r *Report) {
		kinds := map[string]struct{ polar, oils float64 }{} // by phase, looked at once
		for i, m := range s.Materials() {
			p := s.Formula.Lines[i].Phase
			if p == "" || m.Form != levigate.Liquid || s.Grams(i) == 0 || m.HasRole("emulsifier") || m.HasRole("base") {
				continue
			}
			k, seen := kinds[p]
			if !seen {
				k.polar, k.oils = s.phaseKinds(p)
				kinds[p] = k
			}
			var say string
			switch {
			case m.Belongs == levigate.InWaterPhase && k.oils >= oneKind:
				say = "polar-in-oil"
			case m.Belongs == levigate.InOilPhase && k.polar >= oneKind:
				say = "oil-in-polar"
			default:
				continue
			}
			r.Broken(Note{Say: say, At: []string{atLine(i)}, Args: Args{"name": s.Name(i), "phase": p}})
		}
	},
	Examples: []Example{
		{
			Name: "glycerin in the oil beaker",
			Given: sheet(line("20", "Propanediol", liquid(levigate.InWaterPhase)), phase("A"), line("70", "Sunflower oil", liquid(levigate.InOilPhase)), phase("B"),
				line("5", "Glycerin", liquid(levigate.InWaterPhase)), phase("B"), line("5", "Kaolin", belongs(levigate.InPowderPhase)), phase("B")),
			Want: "C14 advice: Phase B is oil, and Glycerin does not mix with oil.\n" +
				"  help: move it to the phase of water and polyols, or say in the making how it is taken up\n" +
				"  at: lines/2\n",
		},
		{
			Name:  "oil in the polyol",
			Given: sheet(line("95", "Glycerin", liquid(levigate.InWaterPhase)), phase("A"), line("5", "Sunflower oil", liquid(levigate.InOilPhase)), phase("A")),
			Want: "C14 advice: Phase A is water and polyols, and Sunflower oil is an oil.\n" +
				"  help: move it to the oil phase, which is fed in slowly\n" +
				"  at: lines/1\n",
		},
		{
			Name: "each in its own",
			Given: sheet(line("20", "Glycerin", liquid(levigate.InWaterPhase)), phase("A"), line("5", "Gel base", liquid(levigate.InOilPhase), role("base")), phase("A"),
				line("75", "Sunflower oil", liquid(levigate.InOilPhase)), phase("B")),
		},
		{Name: "an emulsifier may stand in either", Given: sheet(line("90", "Sunflower oil", liquid(levigate.InOilPhase)), phase("A"), line("10", "Polyglyceryl-10 laurate", liquid(levigate.InWaterPhase), role("emulsifier")), phase("A"))},
		{Name: "three quarters oil are no phase of oil", Given: sheet(line("75", "Sunflower oil", liquid(levigate.InOilPhase)), phase("A"), line("25", "Glycerin", liquid(levigate.InWaterPhase)), phase("A"))},
		{Name: "no letters", Given: sheet(line("90", "Sunflower oil", liquid(levigate.InOilPhase)), line("10", "Glycerin", liquid(levigate.InWaterPhase)))},
	},
})

// phaseKinds is how much of a phase goes with water and how much with oil, as
// shares of what goes with either.
func (s *Subject) phaseKinds(phase string) (polar, oils float64) {
	for i, m := range s.Materials() {
		if s.Formula.Lines[i].Phase != phase {
			continue
		}
		switch m.Belongs {
		case levigate.InWaterPhase:
			polar += s.Grams(i)
		case levigate.InOilPhase:
			oils += s.Grams(i)
		}
	}
	if sum := polar + oils; sum > 0 {
		return polar / sum, oils / sum
	}
	return 0, 0
}

// liquid is a liquid raw material of a phase.
func liquid(b levigate.Belongs) trait {
	return func(m *levigate.Material) { m.Form, m.Belongs = levigate.Liquid, b }
}
