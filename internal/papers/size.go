package papers

import "strings"

// Size is a size of paper, mm.
type Size struct{ Width, Height float64 }

// The sizes.
var (
	A4     = Size{210, 297}
	Letter = Size{215.9, 279.4}
)

// SizeNamed finds a size by its name; false when there is none.
func SizeNamed(name string) (Size, bool) {
	switch strings.ToLower(name) {
	case "a4":
		return A4, true
	case "letter":
		return Letter, true
	}
	return Size{}, false
}

// Margins, mm. The left one is for the binder or the glue.
const (
	leftMargin  = 18
	rightMargin = 12
	topMargin   = 13
	footMargin  = 20 // below the last row, for the foot
)
