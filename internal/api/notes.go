package api

import (
	"slices"
	"strings"

	"levigate"
	"levigate/internal/view"
)

// note is a finding in the margin.
type note struct {
	ID         string
	Severity   view.Severity
	Rule       string
	Text, Help string
	Needs      string
	Line       string // "line 9", said where no leader shows it
	Also       string // the other lines it is about
	Start      int    // row of the grid where it stands
	Span       int    // rows it is given
	Leader     *leader
}

// sortNotes deals the findings out: those about a line stand at the line, those
// about a water figure in the water section, the rest at the table's head. What
// must be settled before release is named once more at the head of the sheet.
func sortNotes(a *levigate.Assessment) (line map[int][]note, whole, water, stops []note) {
	line = map[int][]note{}
	var pending []note
	var about [][]int
	for i, found := range view.Notes(a) {
		n := note{ID: "note-" + number(i), Severity: found.Severity, Rule: found.Rule, Text: found.Text, Help: found.Help, Needs: found.Needs}
		if found.Blocks() {
			stops = append(stops, n)
		}
		switch {
		case len(found.Lines) > 0:
			about = append(about, found.Lines)
			pending = append(pending, n)
		case slices.ContainsFunc(found.Figures, func(id string) bool { return strings.HasPrefix(id, "water.") }):
			water = append(water, n)
		default:
			whole = append(whole, n)
		}
	}
	for i := range water[:max(0, len(water)-1)] {
		if next := water[i+1]; next.Rule == water[i].Rule && next.Help == water[i].Help {
			water[i].Help = "" // rows of one rule say what to do once
		}
	}
	spread(line, pending, about)
	return line, whole, water, stops
}

// spread gives every note about lines one of them to stand at. Those with one
// line have no choice and go first; the others take the line of theirs that has
// the fewest notes yet.
func spread(line map[int][]note, notes []note, about [][]int) {
	deal := func(i, at int) {
		n := notes[i]
		n.Line = "line " + number(at)
		others := slices.DeleteFunc(slices.Clone(about[i]), func(l int) bool { return l == at })
		slices.Sort(others)
		switch len(others) {
		case 0:
		case 1:
			n.Also = "Also line " + linesText(others) + "."
		default:
			n.Also = "Also lines " + linesText(others) + "."
		}
		line[at] = append(line[at], n)
	}
	for i, lines := range about {
		if len(lines) == 1 {
			deal(i, lines[0])
		}
	}
	for i, lines := range about {
		if len(lines) > 1 {
			deal(i, slices.MinFunc(lines, func(a, b int) int { return len(line[a]) - len(line[b]) }))
		}
	}
}
