package work

import (
	"math"
	"slices"

	"levigate/cite"
)

// Shape is how a cause spreads between its low and its high.
type Shape uint8

// The shapes.
const (
	Normal Shape = iota
	Uniform
	LogNormal
)

// Cause is one uncertain thing. Low and High are the ends of its 90 % range in
// its own unit, Mid the value used.
type Cause struct {
	Key            string // "material/…/water", "substance/glycerol/isotherm", "method/zsr"
	Name           string // what a person reads: "water in Maize starch"
	Low, Mid, High float64
	Shape          Shape
	Grade          cite.Grade
	NotStated      bool   // size unknown: listed, never counted as zero
	Settle         string // the reading that would replace it
}

// Move is what one cause does to one figure: the change when the cause stands
// at its low and at its high end.
type Move struct {
	Cause     *Cause
	Low, High float64
}

// Size is the move's larger end.
func (m *Move) Size() float64 { return max(math.Abs(m.Low), math.Abs(m.High)) }

// Quadrature adds the moves of independent causes, each side by itself, and
// returns how far the figure may lie below and above its value.
func Quadrature(moves []Move) (down, up float64) {
	for i := range moves {
		m := &moves[i]
		lo, hi := m.Low, m.High
		if lo > hi {
			lo, hi = hi, lo
		}
		if lo < 0 {
			down += lo * lo
		}
		if hi > 0 {
			up += hi * hi
		}
	}
	return math.Sqrt(down), math.Sqrt(up)
}

// Moves evaluates f at the middle of all causes and with each moved to its low
// and its high end. f receives the causes' values in order and must not keep
// the slice.
func Moves(f func(x []float64) float64, causes []*Cause) (mid float64, moves []Move) {
	x := make([]float64, len(causes))
	for i, c := range causes {
		x[i] = c.Mid
	}
	mid = f(x)
	moves = make([]Move, len(causes))
	for i, c := range causes {
		moves[i].Cause = c
		if c.NotStated {
			continue
		}
		x[i] = c.Low
		moves[i].Low = f(x) - mid
		x[i] = c.High
		moves[i].High = f(x) - mid
		x[i] = c.Mid
	}
	return mid, moves
}

// SetBand gives the figure its value, its interval from the moves and the
// moves themselves, largest first; floor and ceil bound the interval where
// nature does (an activity lies between 0 and 1).
func (f *Figure) SetBand(value float64, moves []Move, floor, ceil float64) {
	down, up := Quadrature(moves)
	f.Value = value
	f.Low = math.Max(value-down, math.Min(floor, value))
	f.High = math.Min(value+up, math.Max(ceil, value))
	slices.SortStableFunc(moves, func(a, b Move) int {
		switch x, y := a.Size(), b.Size(); {
		case x > y:
			return -1
		case x < y:
			return 1
		}
		return 0
	})
	f.Moves = moves
}
