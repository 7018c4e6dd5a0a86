package api

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"levigate"
)

// note is a finding in the margin.
type note struct {
	ID         string
	Severity   severity
	Rule       string
	Text, Help string
	Needs      string
	Also       string // the other lines it is about
	Start      int    // row of the grid where it stands
	Span       int    // rows it is given
	Rise       int    // half rows its line stands above (below, if negative) the note's first line
}

// gravity orders findings: what must be settled first stands first.
var gravity = map[string]int{"stop": 0, "warn": 1, "cant": 2, "adv": 3}

// sortNotes deals the findings out: those about a line stand at the line, those
// about a water figure in the water section, the rest at the table's head.
func sortNotes(a *levigate.Assessment) (line map[int][]note, whole, water []note) {
	line = map[int][]note{}
	findings := slices.Clone(a.Findings)
	slices.SortStableFunc(findings, func(x, y levigate.Finding) int {
		return gravity[severityOf(&x).Class] - gravity[severityOf(&y).Class]
	})
	for i := range findings {
		f := &findings[i]
		n := note{ID: "note-" + strconv.Itoa(i+1), Severity: severityOf(f), Rule: f.Rule, Text: f.Text, Help: sentence(f.Help), Needs: sentence(f.Needs)}
		lines := linesAt(f.At)
		switch {
		case len(lines) > 0 && lines[0] < len(a.Formula.Lines):
			if len(lines) > 1 {
				n.Also = "Also line " + linesText(lines[1:])
			}
			line[lines[0]] = append(line[lines[0]], n)
		case slices.ContainsFunc(f.At, func(at string) bool { return strings.HasPrefix(at, "figures/water.") }):
			water = append(water, n)
		default:
			whole = append(whole, n)
		}
	}
	return line, whole, water
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

// Leader is the path from the row's right edge to the note, in the note's own
// corner: straight when they are level, bent when the note had to move.
func (n note) Leader() string {
	y := 16 - 16*n.Rise
	if n.Rise == 0 {
		return "M0 16H52"
	}
	return fmt.Sprintf("M0 %dH14L42 16H52", y)
}
