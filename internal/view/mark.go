package view

import "levigate"

// Mark is the small sign in front of a raw material: what it is mostly made
// of. Each has a shape of its own; colour is the second cue.
type Mark string

// The marks, named as in the style sheet.
const (
	WaterLike  Mark = "water"
	PolyolLike Mark = "polyol"
	OilLike    Mark = "oil"
	GrainLike  Mark = "grain"
	Other      Mark = "other"
)

// Says names the mark for who listens to the page.
func (m Mark) Says() string {
	return map[Mark]string{WaterLike: "water", PolyolLike: "dissolves in the polar liquid", OilLike: "oil", GrainLike: "powder or grain", Other: "other"}[m]
}

// MarkOf is the kind that most of a raw material's mass belongs to.
func MarkOf(m *levigate.Material) Mark {
	by := map[Mark]float64{WaterLike: m.Water.Typical}
	for _, s := range m.DryShares() {
		k := Other
		if s.Substance != nil {
			k = MarkOfKind(s.Substance.Kind)
		}
		by[k] += s.Percent.Typical * (100 - m.Water.Typical) / 100
	}
	best := Other
	for _, k := range []Mark{WaterLike, PolyolLike, OilLike, GrainLike} {
		if by[k] > by[best] {
			best = k
		}
	}
	return best
}

// MarkOfKind is the mark of a substance's kind.
func MarkOfKind(k levigate.Kind) Mark {
	switch k {
	case levigate.Water:
		return WaterLike
	case levigate.Solute:
		return PolyolLike
	case levigate.Oil:
		return OilLike
	case levigate.Powder:
		return GrainLike
	}
	return Other
}
