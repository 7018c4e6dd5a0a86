package view

import (
	"slices"
	"strconv"
	"strings"

	"levigate"
	"levigate/work/render"
)

// Note is a finding as it stands in the margin.
type Note struct {
	*levigate.Finding
	Severity   Severity
	Text, Help string // sentences, with figures tied to their units
	Needs      string
	Lines      []int    // it points at, from 0
	Figures    []string // it points at, by id
}

// gravity orders findings: what must be settled first stands first.
var gravity = map[string]int{"stop": 0, "warn": 1, "cant": 2, "adv": 3}

// Notes lists the findings of a check for the margin, the gravest first.
func Notes(a *levigate.Assessment) []Note {
	out := make([]Note, len(a.Findings))
	for i := range a.Findings {
		f := &a.Findings[i]
		out[i] = Note{Finding: f, Severity: SeverityOf(f), Text: render.Tie(f.Text), Help: render.Tie(Sentence(f.Help)),
			Needs: render.Tie(Sentence(f.Needs)), Lines: linesAt(f.At)}
		for _, at := range f.At {
			if id, ok := strings.CutPrefix(at, "figures/"); ok {
				out[i].Figures = append(out[i].Figures, id)
			}
		}
	}
	slices.SortStableFunc(out, func(x, y Note) int { return gravity[x.Severity.Class] - gravity[y.Severity.Class] })
	return out
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
