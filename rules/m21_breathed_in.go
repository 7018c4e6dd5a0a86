package rules

import (
	"levigate"
	"levigate/cite"
)

var _ = register(Rule{
	ID:    "M21",
	Name:  "breathed-in",
	Title: "A spray, and what is breathed in with it",
	Why: "A mist's finest droplets and any powder in it reach the lungs, where a silicone, an oil or a fine mineral does what it does not do on skin. " +
		"Which share is that fine depends on the pump, not on the formula, so the pump is part of what is assessed.",
	Since:    "0.1",
	Severity: levigate.Advice,
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Messages: map[string]Message{
		"spray": {
			Text:  "It is sprayed: what is breathed in has to be assessed with this pump.",
			Help:  "a coarse pump, words on the pack (not towards the face, not in a small room), and its droplet sizes for the assessor",
			Needs: "droplet sizes from this pump: the share below 10 µm",
		},
		"matter": {
			Text:  "It is sprayed and holds {names}: fine powder, oil or silicone does harm in the lungs that it does not do on skin.",
			Help:  "leave it out of a spray, or a pump so coarse that nothing fine leaves it; its droplet sizes for the assessor",
			Needs: "droplet sizes from this pump: the share below 10 µm",
		},
	},
	Check: func(s *Subject, r *Report) {
		if !s.Formula.Use.Spray && s.Formula.Product != "deodorant-spray" {
			return
		}
		lines := s.Lines(func(i int, m *levigate.Material) bool {
			return s.Grams(i) >= breathedFrom && (mostly(m, levigate.Powder) || mostly(m, levigate.Oil) && m.Belongs != levigate.InCoolDown || m.Is("silicone"))
		})
		if len(lines) == 0 {
			r.CannotTell(Note{Say: "spray"})
			return
		}
		r.CannotTell(Note{Say: "matter", At: atLines(lines), Args: Args{"names": s.Names(lines)}})
	},
	Examples: []Example{
		{Name: "a hand mist", Given: sheet(sprayed(), aqua("97"), polyol("3", "Glycerin")), Want: "M21 advice, cannot tell: It is sprayed: what is breathed in has to be assessed with this pump.\n" +
			"  help: a coarse pump, words on the pack (not towards the face, not in a small room), and its droplet sizes for the assessor\n" +
			"  needs: droplet sizes from this pump: the share below 10 µm\n"},
		{Name: "a dry oil spray", Given: sheet(sprayed(), oily(), oil("99", "Jojoba oil"), line("1", "Silica", of("Silica", 100), kind(levigate.Powder))), Want: "M21 advice, cannot tell: It is sprayed and holds Jojoba oil and Silica: fine powder, oil or silicone does harm in the lungs that it does not do on skin.\n" +
			"  help: leave it out of a spray, or a pump so coarse that nothing fine leaves it; its droplet sizes for the assessor\n" +
			"  needs: droplet sizes from this pump: the share below 10 µm\n" +
			"  at: lines/0 lines/1\n"},
		{Name: "poured", Given: sheet(aqua("97"), polyol("3", "Glycerin"))},
	},
})

// breathedFrom is the share from which such matter counts; less is scent, g per
// 100 g.
const breathedFrom = 1.0

func sprayed() entry { return func(a *levigate.Assessment) { a.Formula.Use.Spray = true } }
