package view

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"levigate"
	"levigate/internal/chart"
	"levigate/quantity"
	"levigate/work"
	"levigate/work/render"
)

// moisture is what the formula holds against activity, with its own point, the
// limits and the room left to the first of them.
func moisture(a *levigate.Assessment, c *levigate.Curve) chart.Spec {
	s := chart.Spec{X: chart.Axis{Title: "water activity at " + Degrees(a.Conditions.Temperature), Min: 0, Max: 1}, Hue: "water",
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
			if last := len(s.At) - 1; last >= 0 && m.X > s.At[last] {
				// A wet product lies beyond the last round activity: the line
				// goes on to where it is, its band does not.
				s.At, s.Line = append(slices.Clone(s.At), m.X), append(slices.Clone(s.Line), m.Y)
			}
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
