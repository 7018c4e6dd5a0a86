package rules

import (
	"slices"
	"strings"

	"levigate"
	"levigate/cite"
)

var _ = register(Rule{
	ID:    "C11",
	Name:  "contested-claim",
	Title: "A claim that is regulated or contested",
	Why: "Some words on a pack have to be shown by evidence, some are discouraged because they run down what the law allows, " +
		"and some turn a cosmetic into a medicine. Which is which differs from market to market; that the question is open does not.",
	Since:    "0.1",
	Severity: levigate.Advice,
	Sources:  []cite.Ref{{Key: "eu-claims"}, {Key: "trade-practice"}},
	Messages: map[string]Message{
		"contested": {
			Text: "The sheet makes a claim that is regulated or contested: {claims}.",
			Help: "look up the law on claims where it is sold, and file the evidence before it goes on a label",
		},
		"medicinal": {
			Text: "The sheet makes a claim that may turn the product into a medicine or a biocide: {claims}.",
			Help: "drop it, or ask the authority where it is sold what the product then counts as",
		},
		"free-of": {
			Text: "The sheet claims to be {claims}. In the EU such a claim is discouraged: it runs down what the law allows, and a raw material may bring some in.",
			Help: "drop it, or say what the product does instead; look through the documents of every blend first",
		},
	},
	Check: func(s *Subject, r *Report) {
		said := map[string][]string{}
		for _, c := range s.Formula.Claims {
			if say, words := contested(c); say != "" && !slices.Contains(said[say], words) {
				said[say] = append(said[say], words)
			}
		}
		for _, say := range []string{"contested", "medicinal", "free-of"} {
			if len(said[say]) > 0 {
				r.Broken(Note{Say: say, Row: say, Args: Args{"claims": said[say]}})
			}
		}
	},
	Examples: []Example{
		{Name: "words of the trade fair", Given: sheet(line("100", "Glycerin"), claim("natural"), claim("Hypoallergenic"), claim("vegan")), Want: "C11/contested advice: The sheet makes a claim that is regulated or contested: natural and hypoallergenic.\n" +
			"  help: look up the law on claims where it is sold, and file the evidence before it goes on a label\n"},
		{Name: "without preservatives", Given: sheet(line("100", "Glycerin"), claim("preservative-free"), claim("no preservatives"), claim("parabens-free")), Want: "C11/free-of advice: The sheet claims to be free of preservatives and free of parabens. In the EU such a claim is discouraged: it runs down what the law allows, and a raw material may bring some in.\n" +
			"  help: drop it, or say what the product does instead; look through the documents of every blend first\n"},
		{Name: "a medicine's words", Given: sheet(line("100", "Glycerin"), claim("antibacterial"), claim("healing")), Want: "C11/medicinal advice: The sheet makes a claim that may turn the product into a medicine or a biocide: antibacterial and healing.\n" +
			"  help: drop it, or ask the authority where it is sold what the product then counts as\n"},
		{Name: "a claim another rule looks at", Given: sheet(line("100", "Glycerin"), claim("low-water"))},
	},
})

// contested says which message a claim calls for, and how it is quoted: some
// claims are words this program does not print.
func contested(claim string) (say, words string) {
	c := strings.Join(strings.FieldsFunc(strings.ToLower(claim), func(r rune) bool { return r == ' ' || r == '-' || r == '_' }), "-")
	switch {
	case slices.Contains([]string{"preservative-free", "preservatives-free", "no-preservatives", "no-preservative", "without-preservatives", "unpreserved", "self-preserving", "self-preserved"}, c):
		return "free-of", "free of preservatives"
	case slices.Contains([]string{"paraben-free", "parabens-free", "no-parabens", "free-from-parabens", "without-parabens"}, c):
		return "free-of", "free of parabens"
	case slices.Contains([]string{"chemical-free", "toxin-free", "non-toxic", "nontoxic"}, c):
		return "free-of", "free of poisons or of chemicals"
	case slices.Contains([]string{"antibacterial", "antimicrobial", "antiseptic", "antifungal", "disinfecting", "sterile", "healing", "heals", "detox", "detoxifying",
		"medicinal", "medicated", "anti-inflammatory", "eczema", "psoriasis", "acne"}, c):
		return "medicinal", strings.ReplaceAll(c, "-", " ")
	case slices.Contains([]string{"natural", "all-natural", "100-natural", "organic", "clean", "green", "hypoallergenic", "dermatologically-tested", "clinically-proven",
		"non-comedogenic", "sustainable", "biodegradable", "reef-friendly", "cruelty-free", "spf"}, c):
		return "contested", strings.ReplaceAll(c, "-", " ")
	}
	return "", ""
}
