package part

import (
	"strconv"

	"levigate/work"
)

// Move adds a move to a figure's list; two moves of one cause (a raw material
// on two lines) are one move.
func Move(moves []work.Move, m work.Move) []work.Move {
	for i := range moves {
		if moves[i].Cause == m.Cause || moves[i].Cause.Key == m.Cause.Key {
			moves[i].Low += m.Low
			moves[i].High += m.High
			return moves
		}
	}
	return append(moves, m)
}

// Number is a line's number as a person counts.
func Number(index int) string { return strconv.Itoa(index + 1) }
