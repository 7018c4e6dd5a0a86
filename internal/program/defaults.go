package program

import (
	"levigate"
	"levigate/quantity"
	"levigate/work"
)

// Default is what a key that is left out stands for, if anything. The list is
// short on purpose: only what a person would be surprised to be asked.
func Default(s work.Symbol) (float64, bool) {
	switch {
	case s.Unit == quantity.Celsius:
		return levigate.Room, true
	case s.Name == "ions":
		return 1, true // a molecule, not a salt
	}
	return 0, false
}
