package api

import (
	"slices"
	"strconv"
	"strings"

	"levigate"
	"levigate/work/render"
)

// note is a finding in the margin.
type note struct {
	ID         string
	Severity   severity
	Rule       string
	Text, Help string
	Needs      string
	Line       string // "line 9", said where no leader shows it
	Also       string // the other lines it is about
	Start      int    // row of the grid where it stands
	Span       int    // rows it is given
	Leader     *leader
}

// gravity orders findings: what must be settled first stands first.
var gravity = map[string]int{"stop": 0, "warn": 1, "cant": 2, "adv": 3}

// sortNotes deals the findings out: those about a line stand at the line, those
// about a water figure in the water section, the rest at the table's head. What
// must be settled before release is named once more at the head of the sheet.
func sortNotes(a *levigate.Assessment) (line map[int][]note, whole, water, stops []note) {
	line = map[int][]note{}
	var pending []note
	var about [][]int
	findings := slices.Clone(a.Findings)
	slices.SortStableFunc(findings, func(x, y levigate.Finding) int {
		return gravity[severityOf(&x).Class] - gravity[severityOf(&y).Class]
	})
	for i := range findings {
		f := &findings[i]
		n := note{ID: "note-" + strconv.Itoa(i+1), Severity: severityOf(f), Rule: f.Rule, Text: render.Tie(f.Text), Help: render.Tie(sentence(f.Help)), Needs: render.Tie(sentence(f.Needs))}
		if f.Blocks() {
			stops = append(stops, n)
		}
		lines := linesAt(f.At)
		switch {
		case len(lines) > 0:
			about = append(about, lines)
			pending = append(pending, n)
		case slices.ContainsFunc(f.At, func(at string) bool { return strings.HasPrefix(at, "figures/water.") }):
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

// linesAt lists the lines a finding points at, counted from 0.
func linesAt(at []string) []int {
	var out []int
	for _, place := range at {
		if n, ok := strings.CutPrefix(place, "lines/"); ok {
			if i, err := strconv.Atoi(n); err == nil && i >= 0 {
				out = append(out, i)
			}
		}
	}
	return out
}

// sentence makes a help text that starts small and ends open into one.
func sentence(s string) string {
	if s == "" {
		return ""
	}
	return strings.ToUpper(s[:1]) + strings.TrimSuffix(s[1:], ".") + "."
}
