package rules

import (
	"levigate"
	"levigate/cite"
)

var _ = register(Rule{
	ID:    "C08",
	Name:  "no-batch-size",
	Title: "A way of making, and no batch size",
	Why: "How long a stirring takes, how fast an oil may be fed and what the smallest weighing is: all of it belongs to a batch of a certain size. " +
		"Minutes and grams copied from a batch of another size are the usual reason why a second batch turns out differently.",
	Since:    "0.1",
	Severity: levigate.Advice,
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Messages: map[string]Message{
		"missing": {
			Text: "The sheet says how it is made in {n} steps, but not how much of it.",
			Help: "write the batch size the steps were tried on",
		},
	},
	Check: func(s *Subject, r *Report) {
		if f := s.Formula; f.Batch.IsZero() && len(f.Making) > 1 {
			r.Broken(Note{Say: "missing", Args: Args{"n": len(f.Making)}})
		}
	},
	Examples: []Example{
		{Name: "steps without a size", Given: sheet(line("100", "Glycerin"), making("", "Stir until clear."), making("", "Fill.")), Want: "C08 advice: The sheet says how it is made in 2 steps, but not how much of it.\n" +
			"  help: write the batch size the steps were tried on\n"},
		{Name: "with a size", Given: sheet(line("100", "Glycerin"), batch("200"), making("", "Stir until clear."), making("", "Fill."))},
		{Name: "a formula on paper", Given: sheet(line("100", "Glycerin"))},
	},
})

// making adds a step of making.
func making(phase, text string) entry {
	return func(a *levigate.Assessment) {
		a.Formula.Making = append(a.Formula.Making, levigate.Step{Phase: phase, Text: text})
	}
}
