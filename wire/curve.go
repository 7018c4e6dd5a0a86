package wire

import "levigate"

// Curve is one line of a chart with its band and its marks.
type Curve struct {
	ID    string `json:"id"`
	X     Axis   `json:"x"`
	Y     Band   `json:"y"`
	Marks []Mark `json:"marks"`
}

// Axis is one side of a curve.
type Axis struct {
	Unit   string     `json:"unit"`
	Values []*float64 `json:"values"`
}

// Band is the other side, with the ends of its 90 % interval.
type Band struct {
	Unit   string     `json:"unit"`
	Values []*float64 `json:"values"`
	Low    []*float64 `json:"low"`
	High   []*float64 `json:"high"`
}

// Mark is a point or a stretch worth naming; a point ends where it begins.
type Mark struct {
	ID   string   `json:"id"`
	Text string   `json:"text"`
	X    *float64 `json:"x"`
	Y    *float64 `json:"y"`
	To   *float64 `json:"to"`
}

func curveOf(c *levigate.Curve) Curve {
	return Curve{
		ID: c.ID, X: Axis{c.X.Unit, numbers(c.X.Values)},
		Y:     Band{c.Y.Unit, numbers(c.Y.Values), numbers(c.Low), numbers(c.High)},
		Marks: each(c.Marks, markOf),
	}
}

func markOf(m *levigate.CurveMark) Mark {
	return Mark{ID: m.ID, Text: m.Text, X: number(m.X), Y: number(m.Y), To: number(m.ToX)}
}
