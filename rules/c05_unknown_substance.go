package rules

import (
	"levigate"
	"levigate/cite"
)

var _ = register(Rule{
	ID:    "C05",
	Name:  "unknown-substance",
	Title: "A raw material of the formula's own names a substance that is not on file",
	Why: "A substance the library does not hold has no limit, no density and no moisture curve here. " +
		"One letter wrong in an INCI name is enough, and a preservative over its limit goes unseen.",
	Since:    "0.1",
	Severity: levigate.Warn,
	Sources:  []cite.Ref{{Key: "levigate-judgement"}},
	Messages: map[string]Message{
		"unknown": {
			Text: "{inci} ({percent:2} % of the formula, in {material}) is not on file: nothing is known of its limits, density or water.",
			Help: "check the spelling; if it is right, look its limits up yourself",
		},
		"nearest": {
			Text: "{inci} ({percent:2} % of the formula, in {material}) is not on file: nothing is known of its limits, density or water.",
			Help: "if {nearest} was meant, write it so; if the name is right, look its limits up yourself",
		},
	},
	Check: func(s *Subject, r *Report) {
		for i := range s.Formula.Lines {
			m := s.Formula.Lines[i].Match.Material
			if m == nil || m.Origin != levigate.OfFormula {
				continue
			}
			for _, share := range m.Declared {
				if share.Substance != nil {
					continue
				}
				n := Note{Say: "unknown", At: []string{atLine(i)},
					Args: Args{"inci": share.INCI, "percent": s.Grams(i) * share.Percent.Typical / 100, "material": m.Name}}
				if share.Nearest != "" {
					n.Say, n.Args["nearest"] = "nearest", share.Nearest
				}
				r.Broken(n)
			}
		}
	},
	Examples: []Example{
		{
			Name:  "one letter short",
			Given: sheet(line("3", "House blend", ownMaterial(), misspelt("Phenoxyetanol", 90, "Phenoxyethanol"))),
			Want: "C05 warn: Phenoxyetanol (2.70 % of the formula, in House blend) is not on file: nothing is known of its limits, density or water.\n" +
				"  help: if Phenoxyethanol was meant, write it so; if the name is right, look its limits up yourself\n" +
				"  at: lines/0\n",
		},
		{
			Name:  "a name like no other",
			Given: sheet(line("50", "Husk", ownMaterial(), misspelt("Husk Powder", 100, ""))),
			Want: "C05 warn: Husk Powder (50.00 % of the formula, in Husk) is not on file: nothing is known of its limits, density or water.\n" +
				"  help: check the spelling; if it is right, look its limits up yourself\n" +
				"  at: lines/0\n",
		},
		{Name: "everything known", Given: sheet(line("5", "House glycerin", ownMaterial(), of("Glycerin", 100)))},
	},
})

// ownMaterial makes a raw material one of the formula's own.
func ownMaterial() trait {
	return func(m *levigate.Material) { m.Origin = levigate.OfFormula }
}

// misspelt declares a substance that is not on file.
func misspelt(inci string, percent float64, nearest string) trait {
	return func(m *levigate.Material) {
		m.Declared = append(m.Declared, levigate.Share{INCI: inci, Nearest: nearest, Percent: levigate.Exactly(percent)})
	}
}
