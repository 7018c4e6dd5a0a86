package view

import (
	"html/template"
	"slices"
	"strings"

	"levigate"
	"levigate/internal/chart"
	"levigate/quantity"
)

// Chart is one chart, Chart for a desk and for a phone, and the same as a
// table.
type Chart struct {
	ID           string // of the curve
	Title, Unit  string
	Wide, Narrow template.HTML
	Says         string
	Head         []string
	Rows         [][]string
}

// The two widths a chart is Chart for, px.
var wide, narrow = size{592, 376}, size{328, 320}

type size struct{ width, height int }

// Charts draws what a check has curves for: the moisture curve, and how the
// product rinses off.
func Charts(a *levigate.Assessment) []Chart {
	var out []Chart
	if c := curve(a, "water.isotherm"); c != nil {
		out = append(out, draw(c, "Moisture curve", "g of water that 100 g of the formula hold", moisture(a, c)))
	}
	if c := curve(a, "structure.rinse"); c != nil && slices.Max(c.High) > 0 {
		d := draw(c, "Rinse path", "crowding as water comes in", rinse(a, c))
		out = append(out, withActivity(a, d))
	} else if c := curve(a, "water.rinse"); c != nil {
		out = append(out, draw(c, "Rinse path", "water activity as water comes in", dilution(a, c)))
	}
	return out
}

// draw makes both sizes and the table. Every point of the table is a point of
// the curve; long ones are thinned to what a person reads.
func draw(c *levigate.Curve, title, unit string, spec chart.Spec) Chart {
	d := Chart{ID: c.ID, Title: title, Unit: unit, Says: spec.Name,
		Head: []string{c.X.Title, c.Y.Title, "between"}}
	id := "clip-" + strings.ReplaceAll(c.ID, ".", "-")
	spec.Width, spec.Height = wide.width, wide.height
	d.Wide = template.HTML(chart.Draw(&spec, id))
	spec.Width, spec.Height = narrow.width, narrow.height
	d.Narrow = template.HTML(chart.Draw(&spec, id+"-narrow"))
	step := max(1, (len(c.X.Values)+23)/24)
	for i := 0; i < len(c.X.Values); i += step {
		v, lo, hi := quantity.Shown(c.Y.Values[i], c.Low[i], c.High[i], quantity.Unit(c.Y.Unit))
		d.Rows = append(d.Rows, []string{quantity.Significant(c.X.Values[i], 3), v, lo + "–" + hi})
	}
	return d
}

func curve(a *levigate.Assessment, id string) *levigate.Curve {
	for i := range a.Curves {
		if a.Curves[i].ID == id {
			return &a.Curves[i]
		}
	}
	return nil
}
