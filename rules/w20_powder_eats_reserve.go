package rules

import (
	"levigate"
	"levigate/cite"
	"levigate/work"
)

// largeShare is the part of the room for water that one powder may bring before
// it is worth drying or measuring.
const largeShare = 0.25

var _ = register(Rule{
	ID:    "W20",
	Name:  "powder-eats-reserve",
	Title: "A powder brings much water for the room there is",
	Why: "Starch, clay and ground shells come with what the store room's air left in them, and a damp lot brings half as much again. " +
		"Where one powder brings more than a quarter of the room that is left to an activity of 0.60, the next lot of it may take the rest.",
	Since:    "0.1",
	Severity: levigate.Advice,
	After:    []string{"C02"},
	Sources:  []cite.Ref{{Key: "levigate-judgement"}},
	Compares: Banded,
	Messages: map[string]Message{
		"much": {
			Text: "{name} brings {water:2} g of water; the room left to 0.60 is {reserve} g per 100 g.",
			Help: "dry it before use and keep it closed, or have the water of each lot measured and enter the reading",
		},
		"cannot-tell": {
			Text:  "{name} brings {water:2} g of water; whether that is more than a quarter of the {reserve} g of room left to 0.60 cannot be told.",
			Help:  "have the water of the lot measured and enter the reading",
			Needs: "the loss on drying of {name}, this lot",
		},
	},
	Check: func(s *Subject, r *Report) {
		room := s.Figure("water.reserve")
		if room == nil || room.State == work.Missing || room.Low <= 0 {
			return
		}
		for i, m := range s.Materials() {
			if m.Form != levigate.FinePow && m.Form != levigate.Grains {
				continue
			}
			brings := s.Grams(i) * m.Water.Typical / 100
			n := Note{At: []string{atLine(i), atFigure(room.ID)}, Args: Args{"name": s.Name(i), "water": brings, "reserve": bandOf(room)}}
			switch room.Against(brings / largeShare) {
			case work.Below:
				n.Say = "much"
				r.Broken(n)
			case work.CannotTell:
				n.Say = "cannot-tell"
				r.CannotTell(n)
			}
		}
	},
	Examples: []Example{
		{
			Name:  "a gel full of starch",
			Given: sheet(line("20", "Maize starch", form(levigate.FinePow), water(12)), figure("water.reserve", 3.5, 2.9, 4.1)),
			Want: "W20 advice: Maize starch brings 2.40 g of water; the room left to 0.60 is 3.5 (2.9–4.1) g per 100 g.\n" +
				"  help: dry it before use and keep it closed, or have the water of each lot measured and enter the reading\n" +
				"  at: lines/0 figures/water.reserve\n", Shows: Under,
		},
		{
			Name:  "about a quarter",
			Given: sheet(line("10", "Maize starch", form(levigate.FinePow), water(12)), figure("water.reserve", 4.6, 4.0, 5.2)),
			Want: "W20 advice, cannot tell: Maize starch brings 1.20 g of water; whether that is more than a quarter of the 4.6 (4.0–5.2) g of room left to 0.60 cannot be told.\n" +
				"  help: have the water of the lot measured and enter the reading\n" +
				"  needs: the loss on drying of Maize starch, this lot\n" +
				"  at: lines/0 figures/water.reserve\n", Shows: Straddles,
		},
		{
			Name:  "exactly a quarter",
			Given: sheet(line("10", "Maize starch", form(levigate.FinePow), water(12.5)), figure("water.reserve", 5, 5, 5)),
			Shows: On,
		},
		{
			Name:  "a hand polish",
			Given: sheet(line("7", "Walnut shell powder", form(levigate.Grains), water(8)), figure("water.reserve", 5.8, 4.7, 6.8)),
			Shows: Over,
		},
		{Name: "no room left: another rule says so", Given: sheet(line("20", "Maize starch", form(levigate.FinePow), water(12)), figure("water.reserve", -15, -17, -13))},
		{Name: "honey is no powder", Given: sheet(line("20", "Honey", water(17)), figure("water.reserve", 3, 2.5, 3.5))},
	},
})
