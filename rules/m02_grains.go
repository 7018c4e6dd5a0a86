package rules

import (
	"slices"

	"levigate"
	"levigate/cite"
)

// felt is the size from which a grain is felt to rub, µm: a starch grain and a
// flake of pearl pigment sit between the drops like a grain and are smooth.
const felt = 60.0

// eyeProducts are the product kinds that go to the eyes by their nature.
var eyeProducts = []string{"eye-shadow", "mascara", "eyeliner", "make-up-remover"}

var _ = register(Rule{
	ID:    "M02",
	Name:  "grains",
	Title: "Grains, near eyes or on broken skin",
	Why: "A grain coarser than about 60 µm is felt to rub. That is what a scrub is for; in an eye or on broken skin it scratches, and ground shells and stones have sharp edges. " +
		"The warning belongs into the instructions for use and into the assessor's file.",
	Since:    "0.1",
	Severity: levigate.Advice,
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Messages: map[string]Message{
		"grains": {
			Text: "Grains that rub: {names}.",
			Help: "say in the instructions: not near the eyes, not on broken skin; and look at the grains' edges under a lens",
		},
		"near-eyes": {
			Text: "Grains that rub, in a product that goes near the eyes: {names}.",
			Help: "leave the grains out, or take the eye area out of the use",
		},
	},
	Check: func(s *Subject, r *Report) {
		lines := s.Lines(func(i int, m *levigate.Material) bool {
			if s.Formula.Product == "bath" && mostly(m, levigate.Solute) {
				return false // gone in the tub before it touches skin
			}
			return s.Sits(i) == levigate.Grain && (m.Size.Typical == 0 || m.Size.Typical >= felt || m.HasRole("scrub"))
		})
		if len(lines) == 0 {
			return
		}
		say := "grains"
		if s.Formula.Use.Eye || slices.Contains(eyeProducts, s.Formula.Product) {
			say = "near-eyes"
		}
		r.Broken(Note{Say: say, At: atLines(lines), Args: Args{"names": s.Names(lines)}})
	},
	Examples: []Example{
		{
			Name:  "a walnut hand polish",
			Given: sheet(product("hand-wash"), line("7", "Walnut shell powder, 150–400 µm", grains()), line("8", "Kaolin")),
			Want: "M02 advice: Grains that rub: Walnut shell powder, 150–400 µm.\n" +
				"  help: say in the instructions: not near the eyes, not on broken skin; and look at the grains' edges under a lens\n" +
				"  at: lines/0\n",
		},
		{
			Name:  "meant for the eye area",
			Given: sheet(nearEyes(), line("1", "Jojoba beads", grains())),
			Want: "M02 advice: Grains that rub, in a product that goes near the eyes: Jojoba beads.\n" +
				"  help: leave the grains out, or take the eye area out of the use\n" +
				"  at: lines/0\n",
		},
		{
			Name:  "a make-up remover goes to the eyes by its nature",
			Given: sheet(product("make-up-remover"), line("1", "Jojoba beads", grains())),
			Want: "M02 advice: Grains that rub, in a product that goes near the eyes: Jojoba beads.\n" +
				"  help: leave the grains out, or take the eye area out of the use\n" +
				"  at: lines/0\n",
		},
		{Name: "a pearl pigment", Given: sheet(product("eye-shadow"), line("20", "Pearl pigment", grains(), size(25)), line("80", "Talc"))},
		{
			Name:  "just coarse enough to be felt",
			Given: sheet(line("5", "Pumice", grains(), size(60)), line("5", "Rice starch", grains(), size(59))),
			Want: "M02 advice: Grains that rub: Pumice.\n" +
				"  help: say in the instructions: not near the eyes, not on broken skin; and look at the grains' edges under a lens\n" +
				"  at: lines/0\n",
		},
		{Name: "a bath salt dissolves", Given: sheet(product("bath"), line("80", "Sea salt", of("Sodium Chloride", 100), kind(levigate.Solute), grains()))},
		{Name: "a fine clay", Given: sheet(line("8", "Kaolin"))},
	},
})

func size(typical float64) trait {
	return func(m *levigate.Material) { m.Size = levigate.Exactly(typical) }
}
