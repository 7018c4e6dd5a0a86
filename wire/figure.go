package wire

import (
	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// Figure is one figure. Low to high is a 90 % interval.
type Figure struct {
	ID         string        `json:"id"`
	Title      string        `json:"title"`
	Value      *float64      `json:"value"`
	Unit       quantity.Unit `json:"unit"`
	Low        *float64      `json:"low"`
	High       *float64      `json:"high"`
	State      string        `json:"state"`
	Grade      string        `json:"grade"`
	Method     string        `json:"method"`
	Causes     []Cause       `json:"causes"`
	Sources    []Source      `json:"sources"`
	Notes      []string      `json:"notes"`
	Calculated *Calculated   `json:"calculated,omitempty"` // the model's answer where a reading took its place
	Reading    string        `json:"reading,omitempty"`    // the reading that did
	Working    *Step         `json:"working,omitempty"`
}

// Cause is one named reason for the band: how far the figure moves, in its own
// unit, when the cause stands at its low and at its high end. Null where nobody
// stated how large the cause is.
type Cause struct {
	Name string   `json:"name"`
	Low  *float64 `json:"low"`
	High *float64 `json:"high"`
}

// Calculated is a value with its band.
type Calculated struct {
	Value *float64 `json:"value"`
	Low   *float64 `json:"low"`
	High  *float64 `json:"high"`
}

// Source is a reference: the key in the bibliography, the reference in full,
// and the place in it.
type Source struct {
	Key  string `json:"key"`
	Text string `json:"text"`
	At   string `json:"at"`
}

// FigureOf turns one figure into JSON's shape.
func FigureOf(f *work.Figure) Figure {
	out := Figure{
		ID: f.ID, Title: f.Title, Unit: f.Unit, State: f.State.String(), Grade: f.Grade.String(),
		Causes: each(f.Moves, causeOf), Sources: each(f.Sources, sourceOf), Notes: list(f.Notes),
		Reading: f.Reading, Working: stepOf(f.Working),
	}
	if f.State != work.Missing {
		out.Value, out.Low, out.High = number(f.Value), number(f.Low), number(f.High)
	}
	if f.Method != nil {
		out.Method = f.Method.ID
	}
	if c := f.Calculated; c != nil {
		out.Calculated = &Calculated{number(c.Value), number(c.Low), number(c.High)}
	}
	return out
}

func causeOf(m *work.Move) Cause {
	out := Cause{Name: m.Cause.Name}
	if !m.Cause.NotStated {
		out.Low, out.High = number(m.Low), number(m.High)
	}
	return out
}

func sourceOf(r *cite.Ref) Source {
	out := Source{Key: r.Key, At: r.At}
	if s, ok := cite.Find(r.Key); ok {
		out.Text = s.Text
	}
	return out
}
