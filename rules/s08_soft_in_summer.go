package rules

import (
	"levigate"
	"levigate/cite"
)

const (
	summer   = 35.0 // °C: a handbag, a car, a window sill
	hardFats = 5.0  // g of what is still solid then that holds a balm, per 100 g
	balmFrom = 5.0  // g of butter per 100 g from which it is meant to be a balm
)

var _ = register(Rule{
	ID:    "S08",
	Name:  "soft-in-summer",
	Title: "A balm that nothing holds at 35 °C",
	Why: "Shea and cocoa butter melt on the skin, and in July in the handbag too. Without a few per cent of wax or a hard fat alcohol to hold the oil a balm sweats, " +
		"runs out of its tin, and turns grainy when it sets again.",
	Since:    "0.1",
	Severity: levigate.Advice,
	After:    []string{"C02"},
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Compares: Exact,
	Messages: map[string]Message{
		"soft": {
			Text: "Soft by {summer:0} °C: {soft}. Of what stays solid there are {hard:1} g; {limit:0} g and more are usual.",
			Help: "bring in wax, or a hard fat alcohol, and leave a tin at 40 °C overnight",
		},
	},
	Check: func(s *Subject, r *Report) {
		if s.Continuous != levigate.OilContinuous {
			return
		}
		var soft []int
		var butter, hard float64
		for i, m := range s.Materials() {
			for j := range m.Declared {
				share := &m.Declared[j]
				x, g := share.Substance, s.Grams(i)*share.Percent.Typical/100
				switch {
				case x == nil || g == 0 || !x.Melting.Known():
				case x.Melting.Typical > summer:
					hard += g
				case x.Is("butter"):
					if butter += g; len(soft) == 0 || soft[len(soft)-1] != i {
						soft = append(soft, i)
					}
				}
			}
		}
		if butter >= balmFrom && hard < hardFats {
			r.Broken(Note{Say: "soft", At: atLines(soft), Args: Args{"soft": s.Names(soft), "summer": summer, "hard": hard, "limit": hardFats}})
		}
	},
	Examples: []Example{
		{
			Name:  "a whipped butter",
			Given: sheet(oily(), line("70", "Shea butter", of("Butyrospermum Parkii Butter", 100, "butter"), melts(33)), oil("28", "Jojoba oil"), line("2", "Beeswax", of("Cera Alba", 100, "wax"), melts(63))),
			Want: "S08 advice: Soft by 35 °C: Shea butter. Of what stays solid there are 2.0 g; 5 g and more are usual.\n" +
				"  help: bring in wax, or a hard fat alcohol, and leave a tin at 40 °C overnight\n" +
				"  at: lines/0\n", Shows: Under,
		},
		{
			Name:  "five grams of wax",
			Given: sheet(oily(), line("70", "Shea butter", of("Butyrospermum Parkii Butter", 100, "butter"), melts(33)), oil("25", "Jojoba oil"), line("5", "Beeswax", of("Cera Alba", 100, "wax"), melts(63))),
			Shows: On,
		},
		{
			Name:  "a balm with wax",
			Given: sheet(oily(), line("30", "Shea butter", of("Butyrospermum Parkii Butter", 100, "butter"), melts(33)), oil("55", "Jojoba oil"), line("15", "Beeswax", of("Cera Alba", 100, "wax"), melts(63))),
			Shows: Over,
		},
		{
			Name:  "five grams of butter",
			Given: sheet(oily(), oil("95", "Jojoba oil"), line("5", "Shea butter", of("Butyrospermum Parkii Butter", 100, "butter"), melts(33))),
			Want: "S08 advice: Soft by 35 °C: Shea butter. Of what stays solid there are 0.0 g; 5 g and more are usual.\n" +
				"  help: bring in wax, or a hard fat alcohol, and leave a tin at 40 °C overnight\n" +
				"  at: lines/1\n",
		},
		{Name: "a serum is meant to run", Given: sheet(oily(), oil("95.1", "Jojoba oil"), line("4.9", "Shea butter", of("Butyrospermum Parkii Butter", 100, "butter"), melts(33)))},
		{Name: "a lotion", Given: sheet(aqua("70"), line("20", "Shea butter", of("Butyrospermum Parkii Butter", 100, "butter"), melts(33)))},
	},
})
