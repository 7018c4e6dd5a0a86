package rules

import (
	"slices"

	"levigate"
)

// amount is what one line brings of a kind of substance, g per 100 g.
type amount struct {
	line      int
	name      string // INCI name, or the line's own where the whole of it is of the kind
	substance *levigate.Substance
	grams     float64
}

// amounts lists what the lines bring of a kind: a class, or the INCI name of
// one substance. Blends are opened. A raw material that is of the class by
// itself, with no substance in it that is, counts whole.
func amounts(s *Subject, kind string) []amount {
	var out []amount
	for i, m := range s.Materials() {
		g, before := s.Grams(i), len(out)
		for _, share := range m.Declared {
			if share.INCI == kind || share.Substance.Is(kind) || share.Substance != nil && share.Substance.INCI == kind {
				out = append(out, amount{i, share.INCI, share.Substance, g * share.Percent.Typical / 100})
			}
		}
		if len(out) == before && slices.Contains(m.Classes, kind) {
			out = append(out, amount{line: i, name: s.Name(i), grams: g})
		}
	}
	return out
}

// grams adds amounts up.
func grams(list []amount) float64 {
	var sum float64
	for _, a := range list {
		sum += a.grams
	}
	return sum
}

// linesOf lists the lines of amounts, each once, in the order given.
func linesOf(lists ...[]amount) []int {
	var out []int
	for _, list := range lists {
		for _, a := range list {
			if !slices.Contains(out, a.line) {
				out = append(out, a.line)
			}
		}
	}
	return out
}

// namesOf lists the names of amounts, each once.
func namesOf(list []amount) []string {
	var out []string
	for _, a := range list {
		if !slices.Contains(out, a.name) {
			out = append(out, a.name)
		}
	}
	return out
}
