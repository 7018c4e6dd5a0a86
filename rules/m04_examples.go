package rules

import "levigate"

// The examples of M04 stand apart: a rule on law has many cases.
var preservativeExamples = []Example{
	{
		Name:  "phenoxyethanol hidden in a blend",
		Given: sheet(product("hand-cream"), line("1.30", "Preservative blend PE 90", of("Phenoxyethanol", 90), of("Ethylhexylglycerin", 10), role("preservative"))),
		Want: "M04/V/29 stop: Phenoxyethanol: 1.17 % as it is, above the limit on file of 1.00 % (V/29, leave-on). Brought by Preservative blend PE 90 (1.17 %).\n" +
			"  help: at most Preservative blend PE 90 (1.11 %), all else unchanged; compare with the legal text in force\n" +
			"  at: lines/0\n",
		Shows: Over,
	},
	{
		Name:  "two lines that bring the same acid",
		Given: sheet(product("face-cream"), line("0.5", "Sodium benzoate", of("Sodium Benzoate", 100), role("preservative")), line("0.1", "Benzoic acid", of("Benzoic Acid", 100), role("preservative"))),
		Want: "M04/V/1 stop: Sodium Benzoate and Benzoic Acid: 0.52 % as Benzoic Acid, above the limit on file of 0.50 % (V/1, leave-on). Brought by Sodium benzoate (0.42 %) and Benzoic acid (0.10 %).\n" +
			"  help: at most Sodium benzoate (0.47 %) and Benzoic acid (0.09 %), all else unchanged; compare with the legal text in force\n" +
			"  at: lines/0 lines/1\n",
	},
	{
		Name:  "exactly the limit",
		Given: sheet(product("hand-cream"), line("0.7", "Phenoxyethanol", of("Phenoxyethanol", 100)), line("0.3", "Phenoxyethanol, second drum", of("Phenoxyethanol", 100))),
		Shows: On,
	},
	{
		Name:  "a blend whose make-up is a range",
		Given: sheet(product("hand-cream"), line("1.1", "Blend PE", declares(&levigate.Substance{INCI: "Phenoxyethanol"}, levigate.Range{Typical: 90, Low: 86, High: 94}))),
		Want: "M04/V/29 warn, cannot tell: Phenoxyethanol: 0.99 (0.95–1.03) % as it is; whether that is above the limit on file of 1.00 % (V/29, leave-on) cannot be told.\n" +
			"  help: ask the supplier for the share of Phenoxyethanol in this lot, or take less\n" +
			"  needs: the certificate of analysis of Blend PE\n" +
			"  at: lines/0\n",
		Shows: Straddles,
	},
	{
		Name:  "benzoate in a lotion, counted as the acid",
		All:   true,
		Given: sheet(product("hand-cream"), line("0.45", "Sodium benzoate", of("Sodium Benzoate", 100, "preservative"))),
		Want: "M04/V/1 stop, holds: Sodium Benzoate: 0.38 % as Benzoic Acid, within the limit on file of 0.50 % (V/1, leave-on).\n" +
			"  at: lines/0\n",
		Shows: Under,
	},
	{
		Name:  "a make-up remover may be rinsed off or left on",
		Given: sheet(product("make-up-remover"), line("1", "Benzoic acid", of("Benzoic Acid", 100))),
		Want: "M04/V/1 warn, cannot tell: Benzoic Acid: 1.00 % as Benzoic Acid; the limit on file is 0.50 % in a product left on and 2.50 % in one rinsed off (V/1).\n" +
			"  help: name a product kind that says whether it is rinsed off\n" +
			"  needs: how the product is used\n" +
			"  at: lines/0\n",
	},
	{
		Name:  "a conditioning agent that is also a preservative",
		Given: sheet(product("hair-conditioner"), line("2", "Cetrimonium chloride", of("Cetrimonium Chloride", 100))),
		Want: "M04/V/44 warn, cannot tell: Cetrimonium Chloride: 2.00 % as it is, above the limit on file for preserving, 0.10 % (V/44). Other uses have rows of their own, which are not on file.\n" +
			"  help: if it is there to preserve, take less; if not, compare with the row of its use\n" +
			"  needs: what Cetrimonium Chloride is in the formula for\n" +
			"  at: lines/0\n",
	},
	{
		Name:  "dehydroacetate in a spray",
		Given: sheet(product("deodorant-spray"), line("0.2", "Sodium dehydroacetate", of("Sodium Dehydroacetate", 100))),
		Want: "M04/V/13 stop: Not allowed in sprays: Sodium Dehydroacetate (V/13).\n" +
			"  help: choose another preservative; compare with the legal text in force\n" +
			"  at: lines/0\n",
	},
	{
		Name:  "an isothiazolinone in a cream",
		Given: sheet(product("face-cream"), line("0.02", "Methylisothiazolinone", of("Methylisothiazolinone", 9.5))),
		Want: "M04/V/39 stop: Not allowed in products left on the skin: Methylisothiazolinone (V/39).\n" +
			"  help: choose another preservative; compare with the legal text in force\n" +
			"  at: lines/0\n",
	},
	{
		Name:  "salicylic acid in toothpaste",
		Given: sheet(product("toothpaste"), line("0.2", "Salicylic acid", of("Salicylic Acid", 100))),
		Want: "M04/V/3 stop: Not allowed in products for the mouth: Salicylic Acid (V/3).\n" +
			"  help: choose another preservative; compare with the legal text in force\n" +
			"  at: lines/0\n",
	},
	{
		Name:  "a preservative whose row is not on file",
		All:   true,
		Given: sheet(line("0.2", "Climbazole", of("Climbazole", 100, "preservative"))),
		Want:  "M04 warn, not judged: 0 of 1 preservatives here have a row on file. Not judged: Climbazole.\n",
	},
	{
		Name:  "a market the rows are not about",
		All:   true,
		Given: sheet(sold("us"), line("1.3", "Phenoxyethanol", of("Phenoxyethanol", 100))),
		Want:  "M04 warn, not judged: The rows on file are of the EU; the sheet is for us. Not judged: Phenoxyethanol.\n",
	},
}
