package wire

import (
	"levigate/quantity"
	"levigate/work"
)

// Step is one step of a working, with the steps under it. Which keys are there
// says what it is: an equation has method and numbers, a table has table.
type Step struct {
	Title   string        `json:"title,omitempty"`
	Text    string        `json:"text,omitempty"`
	Method  string        `json:"method,omitempty"`
	Numbers string        `json:"numbers,omitempty"`
	Result  *float64      `json:"result,omitempty"`
	Unit    quantity.Unit `json:"unit,omitempty"`
	Inputs  []Input       `json:"inputs,omitempty"`
	Table   *Table        `json:"table,omitempty"`
	Sources []Source      `json:"sources,omitempty"`
	Steps   []*Step       `json:"steps,omitempty"`
}

// Input is one number of an equation and where it is from.
type Input struct {
	Symbol string        `json:"symbol"`
	Means  string        `json:"means"`
	Value  *float64      `json:"value"`
	Unit   quantity.Unit `json:"unit"`
	Grade  string        `json:"grade"`
	From   string        `json:"from"`
}

// Table is a table of terms, its cells as text.
type Table struct {
	Head []string   `json:"head"`
	Rows [][]string `json:"rows"`
	Foot []string   `json:"foot,omitempty"`
}

func stepOf(s *work.Step) *Step {
	if s == nil {
		return nil
	}
	out := &Step{Title: s.Title, Text: s.Text, Numbers: s.Numbers, Unit: s.Unit,
		Inputs: each(s.Inputs, inputOf), Sources: each(s.Sources, sourceOf)}
	if s.Method != nil {
		out.Method, out.Result = s.Method.ID, number(s.Result)
	}
	if t := s.Table; t != nil {
		out.Table = &Table{Head: list(t.Head), Rows: append([][]string{}, t.Rows...), Foot: t.Foot}
	}
	for _, sub := range s.Steps {
		out.Steps = append(out.Steps, stepOf(sub))
	}
	return out
}

func inputOf(in *work.Input) Input {
	return Input{Symbol: in.Symbol, Means: in.Means, Value: number(in.Value), Unit: in.Unit, Grade: in.Grade.String(), From: in.From}
}
