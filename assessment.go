package levigate

import "levigate/work"

// Assessment is everything one formula check says.
type Assessment struct {
	Formula     *Formula
	Conditions  Conditions
	Composition Composition
	Figures     Figures
	Curves      []Curve
	Findings    []Finding
	Ingredients Ingredients // one market's list after another
	Problems    []Problem   // lines that could not be read or resolved
	Readings    []Reading   // in force
	// Continuous says which liquid surrounds the other.
	Continuous Continuous
}

// Continuous says which liquid surrounds the other.
type Continuous string

// The kinds of product by continuous liquid.
const (
	PolarContinuous Continuous = "polar" // water or polyol outside, oil inside
	OilContinuous   Continuous = "oil"   // anhydrous: balms, oils
	NoLiquid        Continuous = "none"  // dry powders
)

// Figures holds a check's figures in the order they are shown.
type Figures []work.Figure

// Get looks a figure up; nil when the check did not ask for it.
func (fs Figures) Get(id string) *work.Figure {
	for i := range fs {
		if fs[i].ID == id {
			return &fs[i]
		}
	}
	return nil
}

// Curve is one line of a chart, with its band and the marks on it.
type Curve struct {
	ID    string
	X, Y  Axis
	Low   []float64
	High  []float64
	Marks []CurveMark
}

// Axis is one side of a curve.
type Axis struct {
	Title  string
	Unit   string
	Values []float64
}

// CurveMark is a point or stretch worth naming: the formula itself, a growth
// limit, where the body goes.
type CurveMark struct {
	ID   string
	Text string
	X, Y float64
	ToX  float64 // end of a stretch; equals X for a point
}
