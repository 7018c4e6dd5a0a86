package rules

import (
	"levigate"
	"levigate/cite"
	"levigate/work"
)

var _ = register(Rule{
	ID:    "W02",
	Name:  "wet-no-preservation-plan",
	Title: "Wet enough for growth, and no preservative in the formula",
	Why: "From an activity of 0.75 the organisms of the challenge test begin to grow, and a product that reaches it has to say how it prevents that. " +
		"A trace of preservative carried in by a raw material keeps that raw material, not the product: only a line that plays the part counts here.",
	Since:    "0.1",
	Severity: levigate.Warn,
	After:    []string{"C02"},
	Sources:  []cite.Ref{{Key: "iso29621"}},
	Limits:   []string{"limits/criteria " + lowRisk},
	Compares: Banded,
	Messages: map[string]Message{
		"above": {
			Text: "Water activity {activity} is above {limit:2}, and no line plays the part of a preservative.",
			Help: "state how growth is prevented, and have a laboratory challenge the finished product; or take water out",
		},
		"cannot-tell": {
			Text:  "Water activity {activity} cannot be told from {limit:2}, and no line plays the part of a preservative.",
			Help:  "measure first; if it is above, state how growth is prevented",
			Needs: "a water activity of this version, closed cup, {temperature:0} °C, after it has rested",
		},
	},
	Check: func(s *Subject, r *Report) {
		f, limit := s.Activity(), criterion(lowRisk).Activity
		answer := f.Against(limit)
		if answer != work.Above && answer != work.CannotTell || s.HasRole("preservative") {
			return
		}
		n := Note{At: []string{atFigure(f.ID)}, Args: Args{"activity": bandOf(f), "limit": limit}}
		if answer == work.Above {
			n.Say = "above"
			r.Broken(n)
			return
		}
		n.Say, n.Args["temperature"] = "cannot-tell", s.Conditions.Temperature
		r.CannotTell(n)
	},
	Examples: []Example{
		{
			Name:  "a clay mask with aloe gel that carries its own preservative in",
			Given: sheet(line("19", "Aloe leaf gel", of("Sodium Benzoate", 0.2, "preservative"), water(98)), activity(0.85, 0.82, 0.87)),
			Want: "W02 warn: Water activity 0.85 (0.82–0.87) is above 0.75, and no line plays the part of a preservative.\n" +
				"  help: state how growth is prevented, and have a laboratory challenge the finished product; or take water out\n" +
				"  at: figures/water.activity\n",
			Shows: Over,
		},
		{
			Name:  "about 0.75",
			Given: sheet(line("30", "Honey, runny"), activity(0.74, 0.71, 0.77)),
			Want: "W02 warn, cannot tell: Water activity 0.74 (0.71–0.77) cannot be told from 0.75, and no line plays the part of a preservative.\n" +
				"  help: measure first; if it is above, state how growth is prevented\n" +
				"  needs: a water activity of this version, closed cup, 25 °C, after it has rested\n" +
				"  at: figures/water.activity\n",
			Shows: Straddles,
		},
		{
			Name:  "a reading of exactly 0.75",
			Given: sheet(activity(0.75, 0.75, 0.75)),
			Want: "W02 warn: Water activity 0.75 is above 0.75, and no line plays the part of a preservative.\n" +
				"  help: state how growth is prevented, and have a laboratory challenge the finished product; or take water out\n" +
				"  at: figures/water.activity\n",
			Shows: On,
		},
		{Name: "a gel at 0.30", Given: sheet(activity(0.30, 0.28, 0.34)), Shows: Under},
		{Name: "a lotion with a preservative", Given: sheet(line("0.4", "Benzyl alcohol", role("preservative")), activity(0.98, 0.97, 0.99))},
		{
			Name:  "quiet while a line is not opened",
			Given: sheet(unknown("3", "Grandmother's secret"), activity(0.98, 0.97, 0.99)),
			Want: "C02 warn: Grandmother's secret (3.00 %) could not be opened: no raw material of that name is known.\n" +
				"  help: write an INCI name, or describe the raw material under materials\n" +
				"  at: lines/0\n",
		},
	},
})
