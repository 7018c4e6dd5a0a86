package work

import (
	"levigate/cite"
	"levigate/quantity"
)

// State says whether a figure's value may be used.
type State uint8

// The states. A figure never holds NaN: what cannot be calculated is Missing.
const (
	Missing    State = iota // no value; Notes say what is missing
	OutOfRange              // calculated, with a wider band; Notes say which limit was left
	Good
)

var stateNames = [...]string{"missing", "out-of-range", "good"}

// String is the state as the contract spells it.
func (s State) String() string { return stateNames[s] }

// Figure is one calculated or measured number with everything one may ask of
// it. Low to High is a 90 % interval.
type Figure struct {
	ID        string
	Title     string
	Value     float64
	Low, High float64
	Unit      quantity.Unit
	State     State
	Grade     cite.Grade // the weakest evidence it rests on
	Method    *Method
	Moves     []Move // largest first
	Sources   []cite.Ref
	Notes     []string

	// Calculated holds the model's own answer where a reading has taken the
	// figure's place.
	Calculated *Band
	// Reading names the reading that took its place.
	Reading string
	// Working is present when the calculation ran with a Recorder.
	Working *Step
}

// Band is a value with its 90 % interval.
type Band struct{ Value, Low, High float64 }

// None makes a figure that could not be calculated, and says why.
func None(id, title string, unit quantity.Unit, m *Method, why ...string) Figure {
	return Figure{ID: id, Title: title, Unit: unit, Method: m, Notes: why}
}

// Answer is what comparing a figure with a limit gives.
type Answer uint8

// The three answers, and the fourth for a figure that is missing.
const (
	NotJudged  Answer = iota
	Below             // the whole band lies below the limit
	CannotTell        // the band holds the limit
	Above             // the whole band lies on or above the limit
)

// Against compares the whole band with a limit. On the limit counts as above.
func (f *Figure) Against(limit float64) Answer {
	switch {
	case f == nil || f.State == Missing:
		return NotJudged
	case f.High < limit:
		return Below
	case f.Low >= limit:
		return Above
	}
	return CannotTell
}
