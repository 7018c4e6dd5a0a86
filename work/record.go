package work

import (
	"fmt"

	"levigate/cite"
	"levigate/quantity"
)

// Step is one line of a working: an equation with its numbers, a table of
// terms, a sentence, or a heading that holds further steps.
type Step struct {
	Title   string
	Text    string  // prose, or the equation as printed
	Method  *Method // set for an equation
	Numbers string  // the equation with the numbers in it
	Result  float64
	Unit    quantity.Unit
	Inputs  []Input
	Table   *Table
	Sources []cite.Ref
	Steps   []*Step
}

// Input is one number that went into a step, and where it came from.
type Input struct {
	Symbol string
	Means  string
	Value  float64
	Unit   quantity.Unit
	Grade  cite.Grade
	From   string // "line 3", "refdata isotherms, row glycerol"
}

// Table is a table of terms. Cells are text, formatted by who knows the unit.
type Table struct {
	Head []string
	Rows [][]string
	Foot []string // optional: the sum
}

// Recorder collects the steps of a calculation. A nil Recorder is valid,
// records nothing and costs nothing.
type Recorder struct {
	root  Step
	stack []*Step
}

// NewRecorder starts a working.
func NewRecorder(title string) *Recorder {
	r := &Recorder{root: Step{Title: title}}
	r.stack = []*Step{&r.root}
	return r
}

// On reports whether steps are wanted; callers guard costly text with it.
func (r *Recorder) On() bool { return r != nil }

func (r *Recorder) add(s *Step) *Step {
	top := r.stack[len(r.stack)-1]
	top.Steps = append(top.Steps, s)
	return s
}

// Begin opens a heading; every step up to the matching End belongs to it.
func (r *Recorder) Begin(title string) {
	if r == nil {
		return
	}
	r.stack = append(r.stack, r.add(&Step{Title: title}))
}

// End closes the heading last opened.
func (r *Recorder) End() {
	if r == nil {
		return
	}
	if len(r.stack) == 1 {
		panic("work: End without Begin")
	}
	r.stack = r.stack[:len(r.stack)-1]
}

// Say adds a sentence.
func (r *Recorder) Say(format string, args ...any) {
	if r == nil {
		return
	}
	r.add(&Step{Text: fmt.Sprintf(format, args...)})
}

// Show adds a table of terms.
func (r *Recorder) Show(title string, t *Table) {
	if r == nil {
		return
	}
	r.add(&Step{Title: title, Table: t})
}

// Equation adds an equation with its numbers in it. Inputs stand in the order
// of the method's symbols; their Symbol, Means and Unit are filled in.
func (r *Recorder) Equation(m *Method, result float64, in ...Input) {
	if r == nil {
		return
	}
	if len(in) != len(m.Symbols) {
		panic(fmt.Sprintf("work: %s takes %d inputs, got %d", m.ID, len(m.Symbols), len(in)))
	}
	values := make(map[string]string, len(in))
	for i, s := range m.Symbols {
		in[i].Symbol, in[i].Means, in[i].Unit = s.Name, s.Means, s.Unit
		values[s.Name] = quantity.Significant(in[i].Value, 5)
	}
	r.add(&Step{Title: m.Title, Text: m.Text, Method: m, Numbers: Substitute(m.Text, values),
		Result: result, Unit: m.Unit, Inputs: in, Sources: m.Sources})
}

// Cite adds sources to the heading that is open.
func (r *Recorder) Cite(refs ...cite.Ref) {
	if r == nil {
		return
	}
	top := r.stack[len(r.stack)-1]
	top.Sources = append(top.Sources, refs...)
}

// Step is the working so far.
func (r *Recorder) Step() *Step {
	if r == nil {
		return nil
	}
	return &r.root
}
