package levigate

import "levigate/quantity"

// Formula is a product as its maker writes it.
type Formula struct {
	Code      string
	Name      string
	Product   string // one of Products; decides exposure row, rinse-off or leave-on
	Lines     []Line
	Materials []*Material // raw materials of this formula's own
	Making    []Step
	Batch     quantity.Decimal // grams; zero when not stated
	Markets   []string
	Claims    []string
	Use       Use
	Pack      string
	Notes     string
}

// Line is one raw material in a formula.
type Line struct {
	Phase   string
	Name    string           // as typed
	Percent quantity.Decimal // % w/w; what fills up to 100 when QS
	QS      bool
	Sits    Sits  // where a powder of this line sits; empty takes the material's own
	Place   Place // where it stands in the file
	Match   Match // what the name was found to mean; Match.Material is nil when nothing was
}

// Step is one step of making.
type Step struct {
	Number      string
	Phase       string
	Text        string
	Temperature float64 // °C; meaningful when HasTemperature
	HasTemp     bool
	Minutes     float64 // 0 when not stated
}

// Use says where and by whom a product is used.
type Use struct {
	Area   []string
	Eye    bool
	Spray  bool
	Under3 bool
}

// Place is a position in a file, counted from 1; zero when there is none.
type Place struct{ Line, Column int }

// Sits says where a powder is at rest in the product.
type Sits string

// Where a powder may sit. A grain is coarser than 20 µm: filler, not part of a
// phase.
const (
	InOil    Sits = "oil"
	InPolyol Sits = "polyol"
	Grain    Sits = "grain"
)

// GrainSize is the particle size above which a powder counts as a grain, µm.
const GrainSize = 20

// Total adds all lines, the q.s. line included.
func (f *Formula) Total() quantity.Decimal {
	var sum quantity.Decimal
	for i := range f.Lines {
		sum = sum.Add(f.Lines[i].Percent)
	}
	return sum
}

// FillUp gives the q.s. line what is left to 100, and reports whether the
// other lines leave room for it. Without a q.s. line there is nothing to do.
func (f *Formula) FillUp() bool {
	var sum quantity.Decimal
	var qs *Line
	for i := range f.Lines {
		if l := &f.Lines[i]; l.QS {
			qs = l
		} else {
			sum = sum.Add(l.Percent)
		}
	}
	if qs == nil {
		return true
	}
	qs.Percent = quantity.Decimal{}
	if left := quantity.Hundred.Sub(sum); !left.Negative() {
		qs.Percent = left
		return true
	}
	return false
}

// Claimed reports whether the formula makes a claim.
func (f *Formula) Claimed(claim string) bool {
	for _, c := range f.Claims {
		if c == claim {
			return true
		}
	}
	return false
}

// Products lists the product kinds a formula may name. The last two have no
// exposure row.
var Products = []string{
	"shower-gel", "hand-wash", "shampoo", "hair-conditioner", "hair-styling", "body-lotion", "face-cream",
	"hand-cream", "foundation", "lip", "make-up-remover", "eye-shadow", "mascara", "eyeliner", "deodorant",
	"deodorant-spray", "toothpaste", "mouthwash", "sunscreen", "sunscreen-lip", "hair-dye", "hair-dye-semi",
	"bath", "eau-de-toilette", "perfume", "aftershave", "shaving", "other-rinse-off", "other-leave-on",
}
