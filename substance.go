package levigate

import "levigate/cite"

// Kind says how a substance takes part in the physics of a product.
type Kind string

// The kinds. Surfactants and esters are Other: micelles are not molecules, so
// they count as no solute.
const (
	Water  Kind = "water"
	Solute Kind = "solute" // dissolves in the polar liquid
	Oil    Kind = "oil"    // oils, butters, waxes, silicones, oil-soluble matter
	Powder Kind = "powder" // insoluble solids
	Other  Kind = "other"  // surfactants, gums and what belongs nowhere else
)

// Substance is one INCI substance.
type Substance struct {
	INCI      string
	Aliases   []string // other names it is found by: "Honey" for "Mel"
	CAS       string   // empty when unknown; its mark says whether it was read or recalled
	Kind      Kind
	State     State   `json:",omitzero"` // at 25 °C
	Charge    Charge  `json:",omitzero"` // of what is surface-active, a polymer or a clay; empty elsewhere
	MolarMass float64 // g/mol; 0 when unknown or a mixture
	Density   Range   // g/mL
	Isotherm  *Isotherm
	Classes   []string // what rules look for: "clay", "iron-bearing", "retinoid"
	// SugarHead is the share of a surfactant's mass that is its sugar or
	// glycerol head; the activity's band reaches to what that head would hold.
	SugarHead float64
	HeadLike  string // the solute the head is taken to be: "Sucrose"
	// Melting is where it melts or softens, °C.
	Melting Range `json:",omitzero"`
	// HLB is of an emulsifier, RequiredHLB of an oil in water. Where sources
	// disagree both are kept and the first is used.
	HLB, RequiredHLB []Stated     `json:",omitzero"`
	Solubility       []Solubility `json:",omitzero"`
	Marks            Marks
}

// State is how a substance stands at room temperature.
type State string

// The states.
const (
	LiquidState State = "liquid"
	PasteState  State = "paste" // butters, petrolatum
	SolidState  State = "solid"
)

// Charge is what a substance carries in water.
type Charge string

// The charges.
const (
	Anionic    Charge = "anionic"
	Cationic   Charge = "cationic"
	Nonionic   Charge = "nonionic"
	Amphoteric Charge = "amphoteric"
)

// Stated is a number with how it is known.
type Stated struct {
	Range
	Provenance
}

// Solubility is how much of a substance 100 g of a liquid takes up near 25 °C, g.
type Solubility struct {
	In string // the INCI name of the liquid
	Stated
}

// DissolvesIn is the solubility in a liquid; false when none is on file.
func (s *Substance) DissolvesIn(inci string) (Stated, bool) {
	for _, x := range s.Solubility {
		if x.In == inci {
			return x.Stated, true
		}
	}
	return Stated{}, false
}

// Is reports whether the substance belongs to a class.
func (s *Substance) Is(class string) bool { return s != nil && contains(s.Classes, class) }

// Range is a typical value with the ends of its 90 % range.
type Range struct{ Typical, Low, High float64 }

// Known reports whether a range was given.
func (r Range) Known() bool { return r != Range{} }

// Exactly is a range without width.
func Exactly(v float64) Range { return Range{v, v, v} }

// Marks says of each field how it came into the program, by the field's
// column name.
type Marks map[string]Provenance

// Provenance is how one field is known.
type Provenance struct {
	Mark cite.Mark
	From cite.Ref
}

// Model names an isotherm's form.
type Model string

// The forms. See calc/water for the equations.
const (
	FloryHuggins Model = "flory-huggins"
	Pitzer       Model = "pitzer"
	GAB          Model = "gab"
	Linear       Model = "linear"
	Points       Model = "points"
)

// Isotherm is the data of one water isotherm: grams of water one gram of the
// dry substance holds at an activity. The equations live in calc/water.
type Isotherm struct {
	Name  string // the row it came from: "glycerol"
	Model Model

	// Flory-Huggins: R is the size of the molecule over that of water, Chi the
	// interaction parameter at 25 °C. Slope is the change with 1/T (K) of Chi,
	// and of Beta0 in a salt.
	R, Chi, Slope float64
	MolarMass     float64 // g/mol
	// Ions per formula unit; 1 for a molecule.
	Ions float64
	// Pitzer: the three parameters, and the highest molality they are stated for.
	Beta0, Beta1, CPhi, MaxMolality float64
	// GAB: monolayer g/g, C, K; and the factor a powder keeps of it inside a polyol.
	M0, C, K float64
	InPolyol Range
	// Linear: grams of water one gram holds at activity 1 and 25 °C, and how
	// that grows with temperature (J/mol).
	AtOne    Range
	Enthalpy float64
	// Points: activity and g/g, rising.
	At, Holds []float64

	// Saturation is the activity over the saturated solution at 25 °C; 0 when
	// the substance does not crystallise or nothing is on file. SatSlope is its
	// change, ln a per 1/K.
	Saturation, SatSlope float64

	// How well it is known. Down and Up are the half-widths of the 90 % band in
	// activity inside the fitted range, which reaches down to FitLow; below it
	// the band grows by Grow per unit of activity upwards, half that downwards. Relative is used instead for
	// powders and oils: ± a share of the water held.
	Down, Up, FitLow, Grow float64
	Relative               float64
	TLow, THigh            float64 // °C, range of the data
	Basis                  string  // "measured", "norrish", "unifac", "relative", "assumed"
	Grade                  cite.Grade
	Sources                []cite.Ref
}

func contains(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}
