package api

import "levigate"

// mark is the small sign in front of a raw material: what it is mostly made
// of. Each has a shape of its own; colour is the second cue.
type mark string

// The marks, named as in the style sheet.
const (
	waterMark  mark = "water"
	polyolMark mark = "polyol"
	oilMark    mark = "oil"
	grainMark  mark = "grain"
	otherMark  mark = "other"
)

// Says names the mark for who listens to the page.
func (m mark) Says() string {
	return map[mark]string{waterMark: "water", polyolMark: "dissolves in the polar liquid", oilMark: "oil", grainMark: "powder or grain", otherMark: "other"}[m]
}

// markOf is the kind that most of a raw material's mass belongs to.
func markOf(m *levigate.Material) mark {
	by := map[mark]float64{waterMark: m.Water.Typical}
	for _, s := range m.DryShares() {
		k := otherMark
		if s.Substance != nil {
			k = markOfKind(s.Substance.Kind)
		}
		by[k] += s.Percent.Typical * (100 - m.Water.Typical) / 100
	}
	best := otherMark
	for _, k := range []mark{waterMark, polyolMark, oilMark, grainMark} {
		if by[k] > by[best] {
			best = k
		}
	}
	return best
}

func markOfKind(k levigate.Kind) mark {
	switch k {
	case levigate.Water:
		return waterMark
	case levigate.Solute:
		return polyolMark
	case levigate.Oil:
		return oilMark
	case levigate.Powder:
		return grainMark
	}
	return otherMark
}
