package rules

import (
	"slices"
	"strings"
	"sync"

	"levigate"
	"levigate/refdata"
)

// preservativeIndex finds the rows of the annex about a substance. An entry is
// the rows of one number: they cover the same substances for different uses.
type preservativeIndex struct {
	entries [][]refdata.PreservativeLimit
	of      map[string]int // INCI name to entry
}

// mostEntries bounds the entries, so that a quiet check needs no memory.
const mostEntries = 64

var preservatives = sync.OnceValue(func() *preservativeIndex {
	x := &preservativeIndex{of: map[string]int{}}
	for _, row := range refdata.PreservativeLimits() {
		n := len(x.entries)
		for _, s := range row.Substances {
			if at, seen := x.of[s.INCI]; seen {
				n = at
			}
		}
		if n == len(x.entries) {
			x.entries = append(x.entries, nil)
		}
		x.entries[n] = append(x.entries[n], row)
		for _, s := range row.Substances {
			x.of[s.INCI] = n
		}
	}
	if len(x.entries) > mostEntries {
		panic("rules: the annex has more entries than mostEntries")
	}
	return x
})

// sums adds up each entry over the whole formula, blends opened, as the acid
// where the entry counts so.
func (x *preservativeIndex) sums(s *Subject) (out [mostEntries]levigate.Range) {
	for i := range s.Composition.Contained {
		c := &s.Composition.Contained[i]
		n, known := x.of[c.INCI]
		if !known {
			continue
		}
		p, k := rangeOf(c), factor(&x.entries[n][0], c.INCI)
		out[n].Typical += k * p.Typical
		out[n].Low += k * p.Low
		out[n].High += k * p.High
	}
	return out
}

// rangeOf is a share's range; without one it is exact.
func rangeOf(c *levigate.Contained) levigate.Range {
	if p := c.Percent; p.Low != 0 || p.High != 0 {
		return p
	}
	return levigate.Exactly(c.Percent.Typical)
}

func factor(row *refdata.PreservativeLimit, inci string) float64 {
	for _, s := range row.Substances {
		if s.INCI == inci {
			return s.Factor
		}
	}
	return 1
}

// rowsFor keeps the rows that a product of these uses comes under.
func rowsFor(rows []refdata.PreservativeLimit, uses []string) []*refdata.PreservativeLimit {
	var out []*refdata.PreservativeLimit
	for i := range rows {
		if slices.ContainsFunc(uses, func(u string) bool { return slices.Contains(rows[i].Use, u) }) {
			out = append(out, &rows[i])
		}
	}
	return out
}

// hasOtherUses reports whether the substance has a limit of its own when it is
// in the formula for something else than preserving.
func hasOtherUses(row *refdata.PreservativeLimit) bool {
	return strings.Contains(row.Conditions, "uses")
}
