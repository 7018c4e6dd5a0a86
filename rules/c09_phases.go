package rules

import (
	"slices"
	"strings"
	"unicode"

	"levigate"
	"levigate/cite"
)

var _ = register(Rule{
	ID:    "C09",
	Name:  "phases",
	Title: "Phases of the lines and phases of the making do not meet",
	Why: "A phase letter says what is weighed together and goes in together. A line without one, a phase no step takes up " +
		"or a step for a phase that holds nothing is where a raw material is forgotten at the bench.",
	Since:    "0.1",
	Severity: levigate.Advice,
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Messages: map[string]Message{
		"no-letter": {
			Text: "The other lines have a phase, these have none: {names}.",
			Help: "give them the letter of the phase they go in with",
		},
		"not-made": {
			Text: "No step takes up phase {phases}: {names}.",
			Help: "say in the making when it goes in",
		},
		"no-lines": {
			Text: "The making names phase {phases}, which has no line.",
			Help: "correct the letter, or write the lines that belong to it",
		},
	},
	Check: func(s *Subject, r *Report) {
		var letters, made []string
		var bare []int
		for i := range s.Formula.Lines {
			switch p := s.Formula.Lines[i].Phase; {
			case p == "":
				bare = append(bare, i)
			case !slices.Contains(letters, p):
				letters = append(letters, p)
			}
		}
		if len(letters) > 0 && len(bare) > 0 {
			r.Broken(Note{Say: "no-letter", At: atLines(bare), Args: Args{"names": s.Names(bare)}})
		}
		var nowhere []string
		for i := range s.Formula.Making {
			st := &s.Formula.Making[i]
			made = append(made, st.Phase)
			made = append(made, wordsOf(st.Text)...)
			if p := st.Phase; p != "" && len(letters) > 0 && !slices.Contains(letters, p) && !slices.Contains(nowhere, p) {
				nowhere = append(nowhere, p)
			}
		}
		if len(nowhere) > 0 {
			r.Broken(Note{Say: "no-lines", Args: Args{"phases": nowhere}})
		}
		if !slices.ContainsFunc(s.Formula.Making, func(st levigate.Step) bool { return st.Phase != "" }) {
			return // a making that names no phases forgets none
		}
		var left []string
		var lines []int
		for _, p := range letters {
			if slices.Contains(made, p) {
				continue
			}
			left = append(left, p)
			for i := range s.Formula.Lines {
				if s.Formula.Lines[i].Phase == p {
					lines = append(lines, i)
				}
			}
		}
		if len(left) > 0 {
			r.Broken(Note{Say: "not-made", At: atLines(lines), Args: Args{"phases": left, "names": s.Names(lines)}})
		}
	},
	Examples: []Example{
		{
			Name: "a phase nobody takes up and one that holds nothing",
			Given: sheet(line("20", "Glycerin"), phase("A"), line("79", "Sunflower oil"), phase("B"), line("1", "Rose oil"), phase("C"),
				making("A", "Stir."), making("B", "Feed in."), making("D", "Fold in.")),
			Want: "C09 advice: The making names phase D, which has no line.\n" +
				"  help: correct the letter, or write the lines that belong to it\n" +
				"C09 advice: No step takes up phase C: Rose oil.\n" +
				"  help: say in the making when it goes in\n" +
				"  at: lines/2\n",
		},
		{Name: "a line without a letter", Given: sheet(line("20", "Glycerin"), phase("A"), line("80", "Sunflower oil")), Want: "C09 advice: The other lines have a phase, these have none: Sunflower oil.\n" +
			"  help: give them the letter of the phase they go in with\n" +
			"  at: lines/1\n"},
		{
			Name:  "named in the text of a step",
			Given: sheet(line("20", "Glycerin"), phase("A"), line("80", "Sunflower oil"), phase("B"), making("A", "Stir."), making("", "Feed phase B in.")),
		},
		{Name: "no phases at all", Given: sheet(line("20", "Glycerin"), line("80", "Sunflower oil"), making("", "Stir."))},
	},
})

// wordsOf cuts a text into words.
func wordsOf(text string) []string {
	return strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}
