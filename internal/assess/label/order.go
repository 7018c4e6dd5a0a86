package label

import (
	"math"
	"regexp"

	"levigate"
)

// indexed is a colour index number as a name: CI 77491.
var indexed = regexp.MustCompile(`^CI \d{5}`)

// ties marks places that have as much as the one before them.
func ties(list levigate.Ingredients) {
	for i := 1; i < len(list); i++ {
		a, b := &list[i-1], &list[i]
		b.Tie = group(a) == group(b) && onGrid(a.Percent.Typical) == onGrid(b.Percent.Typical)
	}
}

// doubts marks the places whose order may turn within their ranges: a later one
// that may have more than an earlier one, and enough for its order to count; and
// a free one that may have enough for it.
// Colourants are left out, since their order is free. One pass from each side:
// the least an earlier place may have, the most a later one may.
func doubts(list levigate.Ingredients) {
	least := math.Inf(1)
	for i := range list {
		in := &list[i]
		if in.Colourant {
			break
		}
		// It may have to stand before another; or its order, said to be free, may count.
		if !belowOne(in.Market, in.Percent.High) && (onGrid(in.Percent.High) > least || in.Below1) {
			in.Uncertain = true
		}
		least = math.Min(least, onGrid(in.Percent.Low))
	}
	most := math.Inf(-1)
	for i := len(list) - 1; i >= 0; i-- {
		in := &list[i]
		if in.Colourant {
			continue
		}
		if most > onGrid(in.Percent.Low) {
			in.Uncertain = true
		}
		if !belowOne(in.Market, in.Percent.High) {
			most = math.Max(most, onGrid(in.Percent.High))
		}
	}
}
