package rules

import (
	"slices"

	"levigate"
	"levigate/cite"
	"levigate/refdata"
)

var _ = register(Rule{
	ID:    "M06",
	Name:  "clash",
	Title: "Two substances that clash in one liquid",
	Why: "Opposite charges pair and fall out: a gel collapses, a conditioner stops conditioning, a preservative is tied up. " +
		"Acids eat zinc oxide, sugars brown with proteins. On paper nothing shows; in the beaker it takes a minute, or a month. " +
		"One finding speaks for two lines: the first row of the table that fits.",
	Since:    "0.1",
	Severity: levigate.Warn,
	Sources:  []cite.Ref{{Key: "levigate-judgement"}},
	Limits:   []string{"pairs/clashes"},
	Messages: map[string]Message{
		"beside":   {Text: "{a} beside {b}: {why}.", Help: "{do}"},
		"no-polar": {Text: "{a} beside {b}: they meet in a polar liquid, and here there is none."},
	},
	Check: func(s *Subject, r *Report) {
		var spoken [][2]int
		there := clashes().present(s)
		for i := range clashes().rows {
			row := &clashes().rows[i]
			if !there[row.a] || !there[row.b] {
				continue
			}
			p := &row.Pair
			a, b := amounts(s, p.A), amounts(s, p.B)
			if grams(a) < p.Least {
				continue
			}
			before := len(spoken)
			a, b, spoken = left(apart(a, b), apart(b, a), spoken)
			if len(spoken) > before {
				judgeClash(s, r, p, a, b)
			}
		}
	},
	Examples: []Example{
		{
			Name: "a conditioner thickened with xanthan and preserved with benzoate",
			Given: sheet(aqua("94"), line("5", "Cetrimonium chloride, 29 %", of("Cetrimonium Chloride", 29, "cationic"), of("Aqua", 71)),
				line("0.5", "Xanthan gum", of("Xanthan Gum", 100, "gum", "anionic")), line("0.5", "Sodium benzoate", of("Sodium Benzoate", 100, "benzoate"))),
			Want: "M06/cationic-benzoate advice: Cetrimonium Chloride beside Sodium Benzoate: benzoates pair with quaternary ammonium compounds, and both do less.\n" +
				"  help: choose another preservative, and have the finished product challenged\n" +
				"  at: lines/1 lines/3\n" +
				"M06/cationic-xanthan warn: Cetrimonium Chloride beside Xanthan Gum: xanthan carries a negative charge, and a cationic makes it flock or form lumps.\n" +
				"  help: take a thickener without charge, such as hydroxyethylcellulose\n" +
				"  at: lines/1 lines/2\n",
		},
		{
			Name:  "an acid beside zinc oxide",
			Given: sheet(aqua("90"), line("8", "Zinc oxide", is("zinc-oxide")), line("2", "Lactic acid 80 %", of("Lactic Acid", 80, "acid"), of("Aqua", 20))),
			Want: "M06/acid-zinc-oxide warn: Lactic Acid beside Zinc oxide: the acid dissolves zinc oxide, is used up by it, and the pH drifts upwards.\n" +
				"  help: keep them in separate products, or keep the pH above 7\n" +
				"  at: lines/2 lines/1\n",
		},
		{
			Name:  "in a balm they do not meet",
			All:   true,
			Given: sheet(oily(), line("90", "Shea butter"), line("8", "Zinc oxide", is("zinc-oxide")), line("2", "Salicylic acid", is("acid"))),
			Want: "M06/acid-zinc-oxide warn, not judged: Salicylic acid beside Zinc oxide: they meet in a polar liquid, and here there is none.\n" +
				"  at: lines/2 lines/1\n",
		},
		{Name: "a pair its supplier made", Given: sheet(aqua("95"), line("5", "Ready conditioner base", of("Cetrimonium Chloride", 20, "cationic"), of("Anionic polymer", 2, "anionic")))},
		{Name: "a trace of a cationic", Given: sheet(aqua("99"), line("0.04", "Quaternium", is("cationic")), line("0.5", "Xanthan gum", is("gum")))},
		{Name: "a lotion", Given: sheet(aqua("75"), line("0.3", "Xanthan gum", is("gum", "anionic")), line("0.45", "Sodium benzoate", is("benzoate", "electrolyte")))},
	},
})

func judgeClash(s *Subject, r *Report, p *refdata.Pair, a, b []amount) {
	n := Note{Row: p.Key, Level: p.Level, Mark: p.Mark, Sources: p.Sources, At: atLines(linesOf(a, b)), Say: "beside",
		Args: Args{"a": namesOf(a), "b": namesOf(b)}}
	if p.Water && s.Continuous != levigate.PolarContinuous {
		n.Say = "no-polar"
		r.NotJudged(n)
		return
	}
	n.Args["why"], n.Args["do"] = p.Why, p.Do
	r.Broken(n)
}

// apart keeps the amounts that stand on a line without the other side: a blend
// that holds both was made to.
func apart(a, b []amount) []amount {
	return slices.DeleteFunc(slices.Clone(a), func(x amount) bool {
		return slices.ContainsFunc(b, func(y amount) bool { return y.line == x.line })
	})
}
