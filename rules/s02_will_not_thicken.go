package rules

import (
	"slices"

	"levigate"
	"levigate/cite"
	"levigate/work"
)

// A gel that lives by its drops alone: meant as one from half oil by volume,
// thick from 0.64.
const (
	meantAsGel   = 0.50
	thickFrom    = 0.64
	gelMostWater = 10.0 // g per 100 g; above it is another kind of emulsion
	gelPowder    = 10.0 // g per 100 g; from there powder thickens too
)

var _ = register(Rule{
	ID:    "S02",
	Name:  "will-not-thicken",
	Title: "A gel of oil in polyol below a crowding of 0.64",
	Why: "Such a gel has no thickener: it stands because its drops touch. Spheres thrown together at random touch from 0.64 of the volume; " +
		"below it the product pours, however long it is stirred. Water or an extract added at the end takes a gel below it without a word.",
	Since:    "0.1",
	Severity: levigate.Advice,
	After:    []string{"C02"},
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Compares: Banded,
	Messages: map[string]Message{
		"below": {
			Text: "Crowding {crowding} is below {limit:2} and nothing else thickens: it will pour.",
			Help: "more oil, less polyol or water, or a thickener; if it is meant as a milk, leave it",
		},
		"cannot-tell": {
			Text:  "Crowding {crowding} cannot be told from {limit:2}, below which such a gel pours.",
			Help:  "make a small batch before the formula is settled",
			Needs: "the density of the finished gel without air, and where its powder sits",
		},
	},
	Check: func(s *Subject, r *Report) {
		f := s.Figure("structure.internal-fraction")
		if f == nil || f.Value < meantAsGel || s.Continuous != levigate.PolarContinuous || s.Water() > gelMostWater ||
			!s.mayEmulsify() || s.declared(levigate.Powder) >= gelPowder || s.thickens() {
			return
		}
		n := Note{At: []string{atFigure(f.ID)}, Args: Args{"crowding": bandOf(f), "limit": thickFrom}}
		switch f.Against(thickFrom) {
		case work.Below:
			n.Say = "below"
			r.Broken(n)
		case work.CannotTell:
			n.Say = "cannot-tell"
			r.CannotTell(n)
		}
	},
	Examples: []Example{
		{Name: "a gel with too much glycerin", Given: sheet(emulsifier("3", "Sucrose laurate"), crowding(0.58, 0.56, 0.6)), Want: "S02 advice: Crowding 0.58 (0.56–0.60) is below 0.64 and nothing else thickens: it will pour.\n" +
			"  help: more oil, less polyol or water, or a thickener; if it is meant as a milk, leave it\n" +
			"  at: figures/structure.internal-fraction\n", Shows: Under},
		{Name: "about 0.64", Given: sheet(emulsifier("3", "Sucrose laurate"), crowding(0.65, 0.62, 0.67)), Want: "S02 advice, cannot tell: Crowding 0.65 (0.62–0.67) cannot be told from 0.64, below which such a gel pours.\n" +
			"  help: make a small batch before the formula is settled\n" +
			"  needs: the density of the finished gel without air, and where its powder sits\n" +
			"  at: figures/structure.internal-fraction\n", Shows: Straddles},
		{Name: "exactly 0.64", Given: sheet(emulsifier("3", "Sucrose laurate"), crowding(0.64, 0.64, 0.64)), Shows: On},
		{Name: "a gel at 0.74", Given: sheet(emulsifier("3", "Sucrose laurate"), crowding(0.74, 0.7, 0.76)), Shows: Over},
		{Name: "a lotion thickens by other means", Given: sheet(aqua("67"), emulsifier("3", "Polysorbate 60"), crowding(0.24, 0.24, 0.24))},
		{
			Name:  "grains thicken it",
			Given: sheet(emulsifier("3", "Sucrose laurate"), line("35", "Cane sugar", grains()), crowding(0.58, 0.56, 0.6)),
		},
		{
			Name:  "wax thickens it",
			Given: sheet(emulsifier("3", "Sucrose laurate"), line("6", "Beeswax", is("wax")), crowding(0.58, 0.56, 0.6)),
		},
	},
})

// thickens reports whether something beside the drops stiffens the product.
func (s *Subject) thickens() bool {
	var grains float64
	for i := range s.Materials() {
		if s.Sits(i) == levigate.Grain {
			grains += s.Grams(i)
		}
	}
	return grains >= gelPowder || s.stiffened()
}

// stiffened reports whether something builds a structure in the liquid itself,
// which holds up what would sink.
func (s *Subject) stiffened() bool {
	for i, m := range s.Materials() {
		if s.Grams(i) > 0 && (m.HasRole("thickener") || slices.ContainsFunc(stiffening, m.Is)) {
			return true
		}
	}
	return false
}

var stiffening = []string{"gum", "wax", "butter", "fatty-alcohol", "smectite", "oil-gellant", "organoclay", "polyacrylate"}
