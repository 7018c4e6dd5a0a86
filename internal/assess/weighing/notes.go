package weighing

import (
	"strings"

	"levigate"
)

// notes is what is to be said once about a list.
func notes(l *levigate.WeighingList) []string {
	var out, rounding []string
	for i := range l.Balances {
		if b := &l.Balances[i]; b.Repeatability.IsZero() {
			rounding = append(rounding, b.Name)
		}
	}
	if len(rounding) > 0 {
		out = append(out, "No repeatability is stated for "+strings.Join(rounding, "; ")+
			": only the rounding of the display is counted, which flatters it. Weigh one weight ten times; the standard deviation is s.")
	}
	dissolving, rubbing, watery := false, false, false
	for i := range l.Lines {
		if p := l.Lines[i].Premix; p != nil {
			dissolving, rubbing, watery = dissolving || p.Dissolves, rubbing || !p.Dissolves, watery || p.Watery
		}
	}
	if dissolving {
		out = append(out, "A pre-mix in a liquid holds only where the line dissolves clear: what settles does not divide evenly.")
	}
	if rubbing {
		out = append(out, "Rub powders together in small steps until the colour is even.")
	}
	if watery {
		out = append(out, "Use a pre-mix in water the same day: nothing keeps microbes from it.")
	}
	if dissolving || rubbing {
		out = append(out, "A pre-mix gets its own name and date, and a lot number if any of it is kept.")
	}
	return out
}
