package rules

import (
	"slices"
	"strings"

	"levigate"
	"levigate/cite"
)

var _ = register(Rule{
	ID:    "C07",
	Name:  "same-material-twice",
	Title: "One raw material on two lines of one phase",
	Why: "Splitting a raw material over two phases has a reason; twice in one phase is mostly a slip of copying. " +
		"It is then weighed twice, or once and forgotten, and nobody can tell from the record which.",
	Since:    "0.1",
	Severity: levigate.Advice,
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Messages: map[string]Message{
		"twice": {
			Text: "Twice in phase {phase}: {name}, together {sum:2} %.",
			Help: "write it as one line, or put the second portion into a phase of its own",
		},
		"no-phase": {
			Text: "On two lines: {name}, together {sum:2} %.",
			Help: "write it as one line, or say by a phase letter when each portion goes in",
		},
	},
	Check: func(s *Subject, r *Report) {
		var told []int
		for i := range s.Formula.Lines {
			if slices.Contains(told, i) {
				continue
			}
			same := s.sameInPhase(i)
			if len(same) < 2 {
				continue
			}
			told = append(told, same...)
			var sum float64
			for _, j := range same {
				sum += s.Grams(j)
			}
			n := Note{Say: "twice", At: atLines(same), Args: Args{"name": s.Name(i), "sum": sum, "phase": s.Formula.Lines[i].Phase}}
			if s.Formula.Lines[i].Phase == "" {
				n.Say = "no-phase"
				delete(n.Args, "phase")
			}
			r.Broken(n)
		}
	},
	Examples: []Example{
		{Name: "copied", Given: sheet(line("20", "Glycerin"), phase("A"), line("60", "Sunflower oil"), phase("B"), line("20", "glycerin"), phase("A")), Want: "C07 advice: Twice in phase A: Glycerin, together 40.00 %.\n" +
			"  help: write it as one line, or put the second portion into a phase of its own\n" +
			"  at: lines/0 lines/2\n"},
		{Name: "without phases", Given: sheet(line("20", "Glycerin"), line("60", "Sunflower oil"), line("20", "Glycerin")), Want: "C07 advice: On two lines: Glycerin, together 40.00 %.\n" +
			"  help: write it as one line, or say by a phase letter when each portion goes in\n" +
			"  at: lines/0 lines/2\n"},
		{Name: "split over two phases on purpose", Given: sheet(line("20", "Glycerin"), phase("A"), line("60", "Sunflower oil"), phase("B"), line("20", "Glycerin"), phase("C"))},
	},
})

// sameInPhase lists the lines of a line's phase that hold the same raw
// material, itself among them.
func (s *Subject) sameInPhase(i int) []int {
	var out []int
	a := &s.Formula.Lines[i]
	if a.Name == "" {
		return nil
	}
	for j := range s.Formula.Lines {
		b := &s.Formula.Lines[j]
		if a.Phase != b.Phase || b.Percent.IsZero() {
			continue
		}
		if i == j || a.Match.Material != nil && a.Match.Material == b.Match.Material || len(a.Name) == len(b.Name) && strings.EqualFold(a.Name, b.Name) {
			out = append(out, j)
		}
	}
	return out
}

// phase gives the line before it its phase.
func phase(letter string) entry {
	return func(a *levigate.Assessment) { a.Formula.Lines[len(a.Formula.Lines)-1].Phase = letter }
}
