package chart

// Spec is what a chart shows.
type Spec struct {
	Name          string // the sentence read out in the chart's place
	Width, Height int
	X, Y          Axis
	At            []float64 // x of every point of the line
	Line          []float64
	Low, High     []float64 // the band; may be empty, or end before the line does
	Hue           string    // a custom property without its dashes: "water"
	End           string    // name at the line's right end
	Point         *Point
	Limits        []Limit
	Stretch       *Stretch
	Bracket       *Bracket
	Foot          []Tick // figures along the foot of the plot, above the axis
	FootTitle     string // what they are
}

// Axis is one side: its range, the ticks on it, and what it measures.
type Axis struct {
	Title    string
	Min, Max float64
	Ticks    []Tick
}

// Tick is a place on an axis with its text.
type Tick struct {
	At   float64
	Text string
}

// Point is the formula itself, with its band along x or along y.
type Point struct {
	X, Y  float64
	Low   float64
	High  float64
	Along Side
	Text  string
}

// Side says along which axis a band lies.
type Side uint8

// The sides.
const (
	AlongX Side = iota
	AlongY
)

// Limit is a named vertical line. Limits stand in rising order.
type Limit struct {
	X    float64
	Text string
}

// Stretch is a named range along x.
type Stretch struct {
	From, To float64
	Text     string
	Note     string
}

// Bracket is a named range along y, drawn at one x.
type Bracket struct {
	X, From, To float64
	Text        string
	Note        string
}
