package render

import (
	"slices"

	"levigate/work"
)

// Worth gives the figures that are worth a line for a person: not those that
// are nothing at all without doubt (no grains in it), and not one that repeats
// another under the same title.
func Worth(figures []work.Figure) []*work.Figure {
	var out []*work.Figure
	for i := range figures {
		f := &figures[i]
		nothing := f.State != work.Missing && f.Value == 0 && f.Low == f.High && len(f.Moves) == 0
		same := func(g *work.Figure) bool { return g.Title == f.Title && g.Value == f.Value }
		if !nothing && !slices.ContainsFunc(out, same) {
			out = append(out, f)
		}
	}
	return out
}
