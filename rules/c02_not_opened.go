package rules

import (
	"levigate"
	"levigate/cite"
	"levigate/work"
)

var _ = register(Rule{
	ID:    "C02",
	Name:  "not-opened",
	Title: "A line could not be opened, or a figure could not be calculated",
	Why: "What is not known to be in a line cannot be counted: its water, its solutes, its preservative. " +
		"Figures that need it are missing or too low, and rules that need those figures keep quiet until this is settled.",
	Since:    "0.1",
	Severity: levigate.Warn,
	Sources:  []cite.Ref{{Key: "levigate-judgement"}},
	Messages: map[string]Message{
		"empty": {
			Text: "Line {line} has {percent:2} % and no raw material yet.",
			Help: "name the raw material, or take the line out",
		},
		"unknown": {
			Text: "{name} ({percent:2} %) could not be opened: no raw material of that name is known.",
			Help: "write an INCI name, or describe the raw material under materials",
		},
		"nearest": {
			Text: "{name} ({percent:2} %) could not be opened: no raw material of that name is known.",
			Help: "the nearest names are {nearest}; or describe the raw material under materials",
		},
		"figure": {
			Text: "{title} could not be calculated: {why}.",
			Help: "give what is missing; until then nothing that rests on this figure is judged",
		},
	},
	Check: func(s *Subject, r *Report) {
		for _, i := range s.Composition.Unopened {
			l := &s.Formula.Lines[i]
			at := []string{atLine(i)}
			switch {
			case l.Name == "":
				r.Broken(Note{Say: "empty", At: at, Args: Args{"line": i + 1, "percent": l.Percent}})
			case len(l.Match.Nearest) == 0:
				r.Broken(Note{Say: "unknown", At: at, Args: Args{"name": l.Name, "percent": l.Percent}})
			default:
				r.Broken(Note{Say: "nearest", At: at, Args: Args{"name": l.Name, "percent": l.Percent, "nearest": l.Match.Nearest}})
			}
		}
		if len(s.Composition.Unopened) > 0 || s.Continuous != levigate.PolarContinuous {
			return // the missing figure follows from the line; an anhydrous product has no activity of its whole
		}
		if f := s.Activity(); f != nil && f.State == work.Missing && len(f.Notes) > 0 {
			r.Broken(Note{Say: "figure", At: []string{atFigure(f.ID)}, Args: Args{"title": f.Title, "why": f.Notes}})
		}
	},
	Examples: []Example{
		{
			Name:  "a name the library does not hold",
			Given: sheet(line("90", "Glycerin"), unknown("10", "Gylcerin 86", "Glycerin, 86.5 %", "Glycerin"), missing("water.activity", "line 2 could not be opened")),
			Want: "C02 warn: Gylcerin 86 (10.00 %) could not be opened: no raw material of that name is known.\n" +
				"  help: the nearest names are Glycerin, 86.5 % and Glycerin; or describe the raw material under materials\n" +
				"  at: lines/1\n",
		},
		{
			Name:  "a name like nothing else",
			Given: sheet(unknown("3", "Grandmother's secret")),
			Want: "C02 warn: Grandmother's secret (3.00 %) could not be opened: no raw material of that name is known.\n" +
				"  help: write an INCI name, or describe the raw material under materials\n" +
				"  at: lines/0\n",
		},
		{
			Name:  "a line being typed",
			Given: sheet(line("97", "Glycerin"), unknown("3", "")),
			Want: "C02 warn: Line 2 has 3.00 % and no raw material yet.\n" +
				"  help: name the raw material, or take the line out\n" +
				"  at: lines/1\n",
		},
		{
			Name:  "a solute without an isotherm",
			Given: sheet(line("20", "Mystery polyol"), missing("water.activity", "Mystery polyol has no isotherm and no molar mass on file")),
			Want: "C02 warn: Activity could not be calculated: Mystery polyol has no isotherm and no molar mass on file.\n" +
				"  help: give what is missing; until then nothing that rests on this figure is judged\n" +
				"  at: figures/water.activity\n",
		},
		{Name: "everything opened", Given: sheet(line("100", "Glycerin"), activity(0.2, 0.15, 0.25))},
		{Name: "a balm has no activity of its whole", Given: sheet(oily(), line("100", "Castor oil"), missing("water.activity", "the oil is the continuous liquid"))},
	},
})
