package view

import (
	"fmt"
	"math"
	"slices"

	"levigate"
	"levigate/internal/chart"
	"levigate/quantity"
	"levigate/work"
	"levigate/work/render"
)

// shown is how much added water the rinse path shows, g per 100 g: beyond, it
// is milk.
const shown = 50

// rinse is the crowding as water comes in, with the activity along its foot.
func rinse(a *levigate.Assessment, c *levigate.Curve) chart.Spec {
	s := start(c, "oil")
	// A line along a share reads best when the axis starts near it.
	least, most := math.Floor(10*slices.Min(s.Low))/10, math.Ceil(10*slices.Max(s.High))/10
	s.Y = chart.Round("", least, most)
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

// withActivity adds the activity to the table of the rinse path: both curves go
// along the same water.
func withActivity(a *levigate.Assessment, d Chart) Chart {
	w := curve(a, "water.rinse")
	if w == nil {
		return d
	}
	d.Head = append(d.Head, "water activity", "between")
	for i, x := range w.X.Values {
		for r := range d.Rows {
			if d.Rows[r][0] == quantity.Significant(x, 3) {
				v, lo, hi := quantity.Shown(w.Y.Values[i], w.Low[i], w.High[i], quantity.One)
				d.Rows[r] = append(d.Rows[r], v, lo+"–"+hi)
			}
		}
	}
	return d
}
