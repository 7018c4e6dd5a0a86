package formulafile

import (
	"strconv"

	"levigate/quantity"
)

// Edition is the edition of the formula file that is read and written here.
const (
	Edition       = "formula/1"
	editionWord   = "formula"
	editionNumber = 1
)

// What a file may hold. They are far above any real formula; they keep a
// broken or hostile file from costing more than a moment.
const (
	MaxBytes      = 1 << 20
	MaxLineLength = 16_000 // characters
	MaxMarks      = 60_000 // characters that give structure, wherever they stand
	MaxDepth      = 16     // groups and lists within one another
	MaxEntries    = 1_000  // entries of one group or list
	MaxProblems   = 200    // reported at once
)

// What a formula may hold. The schema states the same; a test compares them.
const (
	MaxLines     = 200
	MaxMaterials = 100
	MaxShares    = 100 // rows of one composition
	MaxSteps     = 200
	MaxWords     = 50 // markets, claims, areas

	MaxCode   = 40  // codes, phases, step numbers, words
	MaxName   = 200 // names
	MaxSource = 500
	MaxText   = 2_000 // a step
	MaxNotes  = 10_000
)

// span is the range a number may lie in; with open set, its low end is not
// part of it.
type span struct {
	low, high float64
	open      bool
	unit      quantity.Unit
}

// The ranges are what can be, with room to spare: a density of 126 is a slip.
var (
	densitySpan     = span{0.1, 20, false, quantity.GramPerML}
	temperatureSpan = span{-50, 300, false, quantity.Celsius}
	minutesSpan     = span{0, 100_000, true, quantity.Minute}
	monolayerSpan   = span{0, 1, true, quantity.GramPerGram}
	energySpan      = span{0, 1_000, true, quantity.One} // C of the GAB equation
	stateSpan       = span{0, 0.99, true, quantity.One}  // K of the GAB equation, which has no end at 1
	linearSpan      = span{0, 10, true, quantity.GramPerGram}
)

// String is the span as a message has it.
func (s span) String() string {
	low, high := strconv.FormatFloat(s.low, 'f', -1, 64), strconv.FormatFloat(s.high, 'f', -1, 64)
	if s.unit != quantity.One {
		high += " " + string(s.unit)
	}
	if s.open {
		return "above " + low + " and up to " + high
	}
	return "between " + low + " and " + high
}

// contains reports whether v lies in the span.
func (s span) contains(v float64) bool {
	return v >= s.low && v <= s.high && (!s.open || v > s.low)
}
