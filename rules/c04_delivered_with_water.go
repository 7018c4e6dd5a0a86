package rules

import (
	"levigate"
	"levigate/cite"
)

var _ = register(Rule{
	ID:    "C04",
	Name:  "delivered-with-water",
	Title: "An INCI name is counted dry, but the material is delivered with water",
	Why: "An INCI name alone means the substance dry and pure. Starches, clays and gums carry their moisture, " +
		"and many salts and acids are sold as solutions of 50 to 80 %. What is weighed then holds water the sheet leaves out.",
	Since:    "0.1",
	Severity: levigate.Warn,
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Messages: map[string]Message{
		"left-out": {
			Text: "{name} is counted dry and pure. As delivered ({delivered}) it holds about {water:1} % water: {out:2} g per 100 g of formula are left out.",
			Help: "name the raw material as it is bought, or describe yours under materials",
		},
	},
	Check: func(s *Subject, r *Report) {
		for i := range s.Formula.Lines {
			l := &s.Formula.Lines[i]
			d := l.Match.Delivered
			if d == nil || l.Percent.IsZero() {
				continue
			}
			r.Broken(Note{Say: "left-out", At: []string{atLine(i)}, Args: Args{
				"name": l.Name, "delivered": d.Name, "water": d.Water.Typical, "out": s.Grams(i) * d.Water.Typical / 100,
			}})
		}
	},
	Examples: []Example{
		{
			Name:  "starch by its INCI name",
			Given: sheet(line("97", "Glycerin"), alone("3", "Zea Mays Starch", "Maize starch", 12)),
			Want: "C04 warn: Zea Mays Starch is counted dry and pure. As delivered (Maize starch) it holds about 12.0 % water: 0.36 g per 100 g of formula are left out.\n" +
				"  help: name the raw material as it is bought, or describe yours under materials\n" +
				"  at: lines/1\n",
		},
		{Name: "the raw material as it is bought", Given: sheet(line("3", "Maize starch", water(12)))},
		{Name: "a line at nought", Given: sheet(alone("0", "Sodium Lactate", "Sodium lactate 60 %", 40))},
	},
})
