package api

import (
	"fmt"
	"html/template"
	"math"
	"strings"

	"levigate"
	"levigate/internal/chart"
	"levigate/quantity"
	"levigate/work"
	"levigate/work/render"
)

// drawn is one chart, drawn for a desk and for a phone, and the same as a
// table.
type drawn struct {
	Title, Unit  string
	Wide, Narrow template.HTML
	Says         string
	Head         []string
	Rows         [][]string
}

// The two widths a chart is drawn for, px.
var wide, narrow = size{592, 376}, size{328, 320}

type size struct{ width, height int }

func chartsOf(a *levigate.Assessment) []drawn {
	var out []drawn
	for i := range a.Curves {
		c := &a.Curves[i]
		switch c.ID {
		case "water.isotherm":
			out = append(out, draw(c, "Moisture curve", "g of water that 100 g of the formula hold", moisture(a, c)))
		case "structure.rinse":
			out = append(out, draw(c, "Rinse path", "crowding as water comes in", rinse(a, c)))
		case "water.rinse":
			out = append(out, draw(c, "Activity on rinsing", "water activity as water comes in", dilution(a, c)))
		}
	}
	return out
}

// draw makes both sizes and the table. Every point of the table is a point of
// the curve; long ones are thinned to what a person reads.
func draw(c *levigate.Curve, title, unit string, spec chart.Spec) drawn {
	d := drawn{Title: title, Unit: unit, Says: spec.Name,
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

// moisture is what the formula holds against activity, with its own point, the
// limits and the room left to the first of them.
func moisture(a *levigate.Assessment, c *levigate.Curve) chart.Spec {
	s := chart.Spec{X: chart.Axis{Title: "water activity at " + degrees(a.Conditions.Temperature), Min: 0, Max: 1}, Hue: "water",
		At: c.X.Values, Line: c.Y.Values, Low: c.Low, High: c.High}
	for _, v := range []float64{0, 0.2, 0.4, 0.6, 0.8, 1} {
		s.X.Ticks = append(s.X.Ticks, chart.Tick{At: v, Text: quantity.Significant(v, 1)})
	}
	f := a.Figures.Get("water.activity")
	says := []string{"Moisture curve."}
	var most, own, first float64
	for _, m := range c.Marks {
		most = math.Max(most, m.Y)
		if m.ID == "formula" {
			own = m.Y
			if f != nil && f.State != work.Missing {
				s.Point = &chart.Point{X: m.X, Y: m.Y, Low: f.Low, High: f.High, Text: render.Band(f)}
			}
			says = append(says, fmt.Sprintf("At activity %.2f the formula holds %s g of water per 100 g.", m.X, quantity.Fixed(m.Y, 1)))
			continue
		}
		name, _, _ := strings.Cut(m.Text, ",")
		s.Limits = append(s.Limits, chart.Limit{X: m.X, Text: fmt.Sprintf("%.2f %s", m.X, name)})
		says = append(says, fmt.Sprintf("At %.2f it would hold %s g.", m.X, quantity.Fixed(m.Y, 1)))
		if len(s.Limits) == 1 {
			first = m.Y
		}
	}
	if reserve := a.Figures.Get("water.reserve"); reserve != nil && reserve.State != work.Missing && reserve.Value > 0 && len(s.Limits) > 0 {
		s.Bracket = &chart.Bracket{X: s.Limits[0].X, From: own, To: first,
			Text: "room for water " + render.Value(reserve) + " g", Note: render.Interval(reserve) + ", before " + quantity.Fixed(s.Limits[0].X, 2)}
	}
	s.Y = chart.Round("g/100 g", 0, 1.15*math.Max(most, 1))
	s.Name = strings.Join(says, " ")
	return s
}

// shown is how much added water the rinse path shows, g per 100 g: beyond, it
// is milk.
const shown = 50

// rinse is the crowding as water comes in, with the activity along its foot.
func rinse(a *levigate.Assessment, c *levigate.Curve) chart.Spec {
	s := start(c, "oil")
	top := 0.0
	for i := range s.High {
		top = math.Max(top, s.High[i])
	}
	s.Y = chart.Round("", 0, math.Min(1, top+0.05))
	f := a.Figures.Get("structure.internal-fraction")
	if f != nil && f.State != work.Missing {
		s.Point = &chart.Point{X: 0, Y: f.Value, Low: f.Low, High: f.High, Along: chart.AlongY, Text: render.Band(f)}
	}
	for _, m := range c.Marks {
		if m.X < shown && m.ToX > 0 {
			s.Stretch = &chart.Stretch{From: m.X, To: m.ToX, Text: m.Text, Note: "a trial would settle it"}
			if m.ToX == m.X {
				s.Stretch.Note = ""
			}
		}
	}
	if w := curve(a, "water.rinse"); w != nil {
		s.FootTitle = "water activity there"
		for i, x := range w.X.Values {
			if x == 5 || x == 10 || x == 15 || x == 20 {
				s.Foot = append(s.Foot, chart.Tick{At: x, Text: quantity.Fixed(w.Y.Values[i], 2)})
			}
		}
	}
	last := len(s.Line) - 1
	s.Name = fmt.Sprintf("Rinse path. Crowding falls from %.2f to %.2f as %d g of water come into 100 g, mixed evenly.", s.Line[0], s.Line[last], shown)
	return s
}

// dilution is the activity as water comes in.
func dilution(a *levigate.Assessment, c *levigate.Curve) chart.Spec {
	s := start(c, "water")
	s.Y = chart.Axis{Min: 0, Max: 1}
	for _, v := range []float64{0, 0.2, 0.4, 0.6, 0.8, 1} {
		s.Y.Ticks = append(s.Y.Ticks, chart.Tick{At: v, Text: quantity.Significant(v, 1)})
	}
	if f := a.Figures.Get("water.activity"); f != nil && f.State != work.Missing {
		s.Point = &chart.Point{X: 0, Y: f.Value, Low: f.Low, High: f.High, Along: chart.AlongY, Text: render.Band(f)}
	}
	last := len(s.Line) - 1
	s.Name = fmt.Sprintf("Water activity rises from %.2f to %.2f as %d g of water come into 100 g, mixed evenly.", s.Line[0], s.Line[last], shown)
	return s
}

// start is the part both rinse charts share: the curve up to where it is shown.
func start(c *levigate.Curve, hue string) chart.Spec {
	n := 0
	for n < len(c.X.Values) && c.X.Values[n] <= shown {
		n++
	}
	s := chart.Spec{X: chart.Axis{Title: "water added, g per 100 g", Min: 0, Max: shown}, Hue: hue,
		At: c.X.Values[:n], Line: c.Y.Values[:n], Low: c.Low[:n], High: c.High[:n]}
	for v := 0; v <= shown; v += 10 {
		s.X.Ticks = append(s.X.Ticks, chart.Tick{At: float64(v), Text: quantity.Significant(float64(v), 2)})
	}
	return s
}

func curve(a *levigate.Assessment, id string) *levigate.Curve {
	for i := range a.Curves {
		if a.Curves[i].ID == id {
			return &a.Curves[i]
		}
	}
	return nil
}
