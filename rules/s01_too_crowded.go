package rules

import (
	"levigate"
	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// crowdedFrom is the oil share by volume above which a gel is usually too stiff
// to squeeze, or breaks.
const crowdedFrom = 0.80

var _ = register(Rule{
	ID:    "S01",
	Name:  "too-crowded",
	Title: "Crowding above 0.80",
	Why: "Round drops pack to 0.74 of the volume; above that they press flat against each other, and the gel stiffens with every gram of oil. " +
		"Above about 0.80 it is mostly too stiff for a tube, and the film of polyol is so thin that a warm day or a fast feed breaks it. " +
		"Where it turns depends on the emulsifier and is found by trial.",
	Since:    "0.1",
	Severity: levigate.Advice,
	After:    []string{"C02", "S04", "W09"},
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Compares: Banded,
	Messages: map[string]Message{
		"above": {
			Text: "Crowding {crowding} is above {limit:2}: stiff, and slow to take up more oil.",
			Help: "two or three grams of oil less; feed slowly and keep a sample at 40 °C before it goes into a tube; with oil outside on purpose, this does not apply",
		},
		"cannot-tell": {
			Text:  "Crowding {crowding} cannot be told from {limit:2}, where such gels are mostly too stiff to squeeze.",
			Help:  "make a small batch and compare its spread with a product you like",
			Needs: "the density of the finished gel without air, and where its powder sits",
		},
	},
	Check: func(s *Subject, r *Report) {
		f := s.Figure("structure.internal-fraction")
		if s.Continuous != levigate.PolarContinuous {
			return
		}
		n := Note{Args: Args{"limit": crowdedFrom}}
		switch f.Against(crowdedFrom) {
		case work.Above:
			n.Say, n.At, n.Args["crowding"] = "above", []string{atFigure(f.ID)}, bandOf(f)
			r.Broken(n)
		case work.CannotTell:
			n.Say, n.At, n.Args["crowding"] = "cannot-tell", []string{atFigure(f.ID)}, bandOf(f)
			r.CannotTell(n)
		}
	},
	Examples: []Example{
		{Name: "a gel with too much oil", Given: sheet(crowding(0.84, 0.82, 0.86)), Want: "S01 advice: Crowding 0.84 (0.82–0.86) is above 0.80: stiff, and slow to take up more oil.\n" +
			"  help: two or three grams of oil less; feed slowly and keep a sample at 40 °C before it goes into a tube; with oil outside on purpose, this does not apply\n" +
			"  at: figures/structure.internal-fraction\n", Shows: Over},
		{Name: "about 0.80", Given: sheet(crowding(0.79, 0.76, 0.82)), Want: "S01 advice, cannot tell: Crowding 0.79 (0.76–0.82) cannot be told from 0.80, where such gels are mostly too stiff to squeeze.\n" +
			"  help: make a small batch and compare its spread with a product you like\n" +
			"  needs: the density of the finished gel without air, and where its powder sits\n" +
			"  at: figures/structure.internal-fraction\n", Shows: Straddles},
		{Name: "exactly 0.80", Given: sheet(crowding(0.8, 0.8, 0.8)), Want: "S01 advice: Crowding 0.80 is above 0.80: stiff, and slow to take up more oil.\n" +
			"  help: two or three grams of oil less; feed slowly and keep a sample at 40 °C before it goes into a tube; with oil outside on purpose, this does not apply\n" +
			"  at: figures/structure.internal-fraction\n", Shows: On},
		{Name: "a gel at 0.74", Given: sheet(crowding(0.74, 0.7, 0.76)), Shows: Under},
		{Name: "a balm has none", Given: sheet(oily(), missing("structure.internal-fraction", "oil surrounds everything"))},
	},
})

// crowding is the oil share by volume with its band.
func crowding(value, low, high float64) entry {
	return func(a *levigate.Assessment) {
		figure("structure.internal-fraction", value, low, high)(a)
		a.Figures[len(a.Figures)-1].Unit = quantity.One
	}
}
