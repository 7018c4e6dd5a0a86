package rules

import (
	"levigate"
	"levigate/cite"
)

var _ = register(Rule{
	ID:    "C12",
	Name:  "line-at-zero",
	Title: "A line at 0 %",
	Why: "A line at 0 % is weighed by nobody and still read by everybody: it slips into an ingredient list, a purchase order or the next version. " +
		"Most are what a trial left behind. A q.s. line at 0 % means that the other lines took its place.",
	Since:    "0.1",
	Severity: levigate.Advice,
	After:    []string{"C01"},
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Messages: map[string]Message{
		"zero": {
			Text: "At 0 %: {names}.",
			Help: "take the line out, or give it its percentage",
		},
		"qs": {
			Text: "The other lines come to 100 %, so {names}, which fills up, is at 0 %.",
			Help: "take from the other lines what it should have, or take it out",
		},
	},
	Check: func(s *Subject, r *Report) {
		var lines []int
		for i := range s.Formula.Lines {
			l := &s.Formula.Lines[i]
			switch {
			case !l.Percent.IsZero() || l.Name == "":
			case l.QS:
				r.Broken(Note{Say: "qs", At: []string{atLine(i)}, Args: Args{"names": s.Name(i)}})
			default:
				lines = append(lines, i)
			}
		}
		if len(lines) > 0 {
			r.Broken(Note{Say: "zero", At: atLines(lines), Args: Args{"names": s.Names(lines)}})
		}
	},
	Examples: []Example{
		{Name: "left over from a trial", Given: sheet(line("100", "Glycerin"), line("0", "Perfume oil"), line("0.00", "Mica")), Want: "C12 advice: At 0 %: Perfume oil and Mica.\n" +
			"  help: take the line out, or give it its percentage\n" +
			"  at: lines/1 lines/2\n"},
		{Name: "a q.s. line with nothing left", Given: sheet(line("60", "Kaolin"), line("40", "Glycerin"), line("0", "Sunflower oil"), filledUp()), Want: "C12 advice: The other lines come to 100 %, so Sunflower oil, which fills up, is at 0 %.\n" +
			"  help: take from the other lines what it should have, or take it out\n" +
			"  at: lines/2\n"},
		{Name: "a small line", Given: sheet(line("99.99", "Glycerin"), line("0.01", "Perfume oil"))},
		{Name: "quiet while the total is wrong", Given: sheet(line("60", "Kaolin"), line("43", "Glycerin"), line("0", "Sunflower oil"), filledUp()), Want: "C01 stop: The lines beside Sunflower oil already add up to 103.00 %, 3.00 % over 100: nothing is left for it to fill up.\n" +
			"  help: take 3.00 % or more away from the other lines\n" +
			"  at: lines/2\n"},
	},
})
