package rules

import (
	"levigate"
	"levigate/cite"
	"levigate/quantity"
)

var _ = register(Rule{
	ID:    "C01",
	Name:  "total-not-100",
	Title: "The lines do not add up to 100 %",
	Why: "Everything else stands on the percentages: the weighing list, the ingredient order, every limit. " +
		"A sheet that adds up to something else is weighed as one product and declared as another. " +
		"The commonest cause is a percentage changed without moving the q.s. line. The sum is exact: no rounding, no tolerance.",
	Since:      "0.1",
	Severity:   levigate.Stop,
	Arithmetic: true,
	Sources:    []cite.Ref{{Key: "trade-practice"}},
	Messages: map[string]Message{
		"over": {
			Text: "The lines add up to {total:2} %, {by:2} % over 100.",
			Help: "take {by:2} % away, or make one line q.s.",
		},
		"short": {
			Text: "The lines add up to {total:2} %, {by:2} % short of 100.",
			Help: "add {by:2} %, or make one line q.s.",
		},
		"no-room": {
			Text: "The lines beside {qs} already add up to {total:2} %, {by:2} % over 100: nothing is left for it to fill up.",
			Help: "take {by:2} % or more away from the other lines",
		},
	},
	Check: func(s *Subject, r *Report) {
		if len(s.Formula.Lines) == 0 {
			return // an empty sheet is not a wrong one
		}
		total := s.Formula.Total()
		switch total.Cmp(quantity.Hundred) {
		case 1:
			args := Args{"total": total, "by": total.Sub(quantity.Hundred)}
			for i := range s.Formula.Lines {
				if s.Formula.Lines[i].QS {
					args["qs"] = s.Name(i)
					r.Broken(Note{Say: "no-room", At: []string{atLine(i)}, Args: args})
					return
				}
			}
			r.Broken(Note{Say: "over", Args: args})
		case -1:
			r.Broken(Note{Say: "short", Args: Args{"total": total, "by": quantity.Hundred.Sub(total)}})
		}
	},
	Examples: []Example{
		{
			Name:  "one percentage raised without moving the rest",
			Given: sheet(line("26", "Glycerin"), line("74.5", "Sunflower oil")),
			Want: "C01 stop: The lines add up to 100.50 %, 0.50 % over 100.\n" +
				"  help: take 0.50 % away, or make one line q.s.\n",
		},
		{
			Name:  "a millionth short",
			Given: sheet(line("26", "Glycerin"), line("73.999999", "Sunflower oil")),
			Want: "C01 stop: The lines add up to 99.999999 %, 0.000001 % short of 100.\n" +
				"  help: add 0.000001 %, or make one line q.s.\n",
		},
		{
			Name:  "no room for the q.s. line",
			Given: sheet(line("60", "Kaolin"), line("43.2", "Glycerin"), line("0", "Sunflower oil"), filledUp()),
			Want: "C01 stop: The lines beside Sunflower oil already add up to 103.20 %, 3.20 % over 100: nothing is left for it to fill up.\n" +
				"  help: take 3.20 % or more away from the other lines\n" +
				"  at: lines/2\n",
		},
		{Name: "thirds that add up", Given: sheet(line("33.333333", "A"), line("33.333333", "B"), line("33.333334", "C"))},
		{Name: "an empty sheet", Given: sheet()},
	},
})
