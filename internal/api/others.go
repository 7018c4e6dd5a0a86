package api

import (
	"html/template"
	"slices"
	"strings"

	"levigate"
	"levigate/work"
	"levigate/work/render"
)

// opened is a figure below the strip, which opens to its working.
type opened struct {
	ID, Title, Value, Unit, Band, Evidence string
	Missing                                bool
	Why                                    string
	Working                                template.HTML
}

// inStrip are the figures that stand at the head already.
var inStrip = map[string]bool{"water.total": true, "water.activity": true, "water.reserve": true,
	"structure.internal-fraction": true, "structure.density": true}

// othersOf lists every figure that is not in the strip.
func othersOf(a *levigate.Assessment) ([]opened, error) {
	var out []opened
	for _, f := range render.Worth(a.Figures) {
		if inStrip[f.ID] || sameWhy(a, f) {
			continue
		}
		o := opened{ID: strings.ReplaceAll(f.ID, ".", "-"), Title: f.Title, Value: render.Value(f), Unit: strings.TrimSpace(render.Suffix(f.Unit)),
			Band: render.Interval(f), Evidence: render.Evidence(f), Missing: f.State == work.Missing, Why: strings.Join(f.Notes, "; ")}
		var err error
		if o.Working, err = render.WorkingHTML(f); err != nil {
			return nil, err
		}
		out = append(out, o)
	}
	return out, nil
}

// sameWhy reports a figure that is missing for the reason the water activity
// is: the strip says it already.
func sameWhy(a *levigate.Assessment, f *work.Figure) bool {
	activity := a.Figures.Get("water.activity")
	return activity != nil && activity.State == work.Missing && f.State == work.Missing && slices.Equal(activity.Notes, f.Notes)
}
