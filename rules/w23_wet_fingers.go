package rules

import (
	"slices"
	"strings"

	"levigate"
	"levigate/cite"
)

var _ = register(Rule{
	ID:    "W23",
	Name:  "wet-fingers",
	Title: "A jar or a tin, and nothing that meets a wet finger",
	Why: "The activity of the whole says nothing about the skin of water a wet finger leaves on top: it takes hours to spread into a thick gel and never spreads into a balm. " +
		"In a jar this happens at every use, with what the finger brings. A preservative in the water phase meets it; a low activity below it does not.",
	Since:    "0.1",
	Severity: levigate.Warn,
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Messages: map[string]Message{
		"jar": {
			Text: "Wet fingers go into the pack ({pack}), and no line plays the part of a preservative: every use leaves water on the surface.",
			Help: "a tube or another pack no finger goes into, a spatula and dry hands in the instructions; and have a laboratory test it as it is used",
		},
		"oil": {
			Text: "Fingers go into the pack ({pack}): what water they bring stays as drops on the surface.",
			Help: "a stick or a tube, a spatula, or dry hands in the instructions",
		},
	},
	Check: func(s *Subject, r *Report) {
		if !dipped(s.Formula.Pack) || s.HasRole("preservative") {
			return
		}
		n := Note{Args: Args{"pack": s.Formula.Pack}}
		switch s.Continuous {
		case levigate.PolarContinuous:
			n.Say = "jar"
		case levigate.OilContinuous:
			n.Say, n.Level = "oil", levigate.Advice
		default:
			return
		}
		r.Broken(n)
	},
	Examples: []Example{
		{Name: "a mask in a jar", Given: sheet(aqua("20"), packed("JAR-PP-100")), Want: "W23 warn: Wet fingers go into the pack (JAR-PP-100), and no line plays the part of a preservative: every use leaves water on the surface.\n" +
			"  help: a tube or another pack no finger goes into, a spatula and dry hands in the instructions; and have a laboratory test it as it is used\n"},
		{Name: "a balm in a tin", Given: sheet(oily(), oil("100", "Castor oil"), packed("Aluminium tin, 15 ml")), Want: "W23 advice: Fingers go into the pack (Aluminium tin, 15 ml): what water they bring stays as drops on the surface.\n" +
			"  help: a stick or a tube, a spatula, or dry hands in the instructions\n"},
		{Name: "a preserved cream in a jar", Given: sheet(aqua("70"), line("1", "Preservative blend PE 90", role("preservative")), packed("JAR-PP-100"))},
		{Name: "a tube", Given: sheet(aqua("2"), packed("TUBE-LAM-35"))},
		{Name: "no pack named", Given: sheet(aqua("2"))},
		{Name: "dry powder in a jar", Given: sheet(line("100", "Kaolin"), dry(), packed("Jar"))},
	},
})

// dipped reports whether fingers go into a pack of this name.
func dipped(pack string) bool {
	for _, w := range wordsOf(strings.ToLower(pack)) {
		if slices.Contains([]string{"jar", "jars", "tin", "tins", "pot", "pots", "tub", "tubs", "dish"}, w) {
			return true
		}
	}
	return false
}

// packed names the pack.
func packed(pack string) entry { return func(a *levigate.Assessment) { a.Formula.Pack = pack } }

// dry is a product without a liquid.
func dry() entry { return func(a *levigate.Assessment) { a.Continuous = levigate.NoLiquid } }
