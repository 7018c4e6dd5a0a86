package levigate

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"

	"levigate/cite"
)

// Share is one substance's part of a raw material, in % of it.
type Share struct {
	INCI      string
	Substance *Substance // nil for a name the library does not hold
	Nearest   string     `json:",omitempty"` // the closest name, when it does not
	Percent   Range
}

// Origin says which shelf a raw material stands on.
type Origin string

// The shelves, in the order they are searched.
const (
	OfFormula   Origin = "formula"
	OfWorkspace Origin = "workspace"
	Embedded    Origin = "embedded"
	Pure        Origin = "substance" // an INCI name used as a line: dry and pure
)

// Material is a raw material: what is bought, weighed and mixed.
//
// It is opened twice. Declared is what goes on the label, by weight as added.
// What it holds (water, and the dry part's true make-up) is what physics sees.
// The two need not agree: honey is declared as itself and holds 17 % water.
type Material struct {
	Code   string
	Name   string
	Origin Origin
	Form   Form

	Declared []Share
	// Water is held as delivered, g per 100 g.
	Water Range
	// Dry is the true make-up of everything that is not water, in % of it; when
	// empty it is Declared without its water.
	Dry []Share
	// Dissolved says its solutes arrive in solution (honey, syrups): they never
	// count as crystals.
	Dissolved bool

	Density  Range // g/mL, as delivered, without air
	Isotherm *Isotherm
	Sits     Sits     // for powders
	Size     Range    // particle size, µm
	Role     []string // "preservative", "emulsifier", "scrub"
	Classes  []string // what rules look for
	Cautions []string // "dust", "hot-wax", "caustic", "acid"
	Storage  []string `json:",omitzero"` // "dark", "cool", "dry"
	Belongs  Belongs  `json:",omitzero"` // the phase it goes into
	// Use is how much of a formula it usually makes up, %; its ends are the usual
	// range and no limit.
	Use Range `json:",omitzero"`
	// OilAbsorption is the oil that 100 g of a powder soak up before they turn to
	// a paste, g.
	OilAbsorption Range    `json:",omitzero"`
	HLB           []Stated `json:",omitzero"` // of this grade, where it is not its substances'

	Grade  cite.Grade
	Source string // the maker's own words for where it comes from
	Marks  Marks
	Place  Place `json:"-"` // where a formula's own stands in its file; no part of the revision
}

// Form is how a raw material arrives.
type Form string

// The forms.
const (
	Liquid   Form = "liquid"
	Crystals Form = "crystals"
	FinePow  Form = "powder"
	Grains   Form = "grains"
	Solid    Form = "solid" // butters, waxes, flakes
)

// Belongs is the phase a raw material goes into.
type Belongs string

// The phases, in the trade's words. What spoils or flies off with heat goes in
// while cooling down.
const (
	InWaterPhase  Belongs = "water" // water, polyols and what dissolves in them
	InOilPhase    Belongs = "oil"
	InPowderPhase Belongs = "powder"
	InCoolDown    Belongs = "cool-down"
)

// Is reports whether the material, or any substance declared in it, belongs to
// a class.
func (m *Material) Is(class string) bool {
	if contains(m.Classes, class) {
		return true
	}
	for i := range m.Declared {
		if m.Declared[i].Substance.Is(class) {
			return true
		}
	}
	return false
}

// HasRole reports whether the material plays a role.
func (m *Material) HasRole(role string) bool { return contains(m.Role, role) }

// Warns reports whether the material carries a caution.
func (m *Material) Warns(caution string) bool { return contains(m.Cautions, caution) }

// DryShares is the make-up of the dry part in % of it.
func (m *Material) DryShares() []Share {
	if len(m.Dry) > 0 {
		return m.Dry
	}
	var sum float64
	for _, s := range m.Declared {
		if !s.IsWater() {
			sum += s.Percent.Typical
		}
	}
	out := make([]Share, 0, len(m.Declared))
	for _, s := range m.Declared {
		if s.IsWater() || sum == 0 {
			continue
		}
		k := 100 / sum
		s.Percent = Range{s.Percent.Typical * k, s.Percent.Low * k, s.Percent.High * k}
		out = append(out, s)
	}
	return out
}

// IsWater reports whether the share is declared water.
func (s Share) IsWater() bool { return s.Substance != nil && s.Substance.Kind == Water }

// Revision is a fingerprint of everything the material says. A corrected
// material is another revision; a frozen version names the one it used. Fields
// that came later are left out while they are empty, so that a new field makes
// no new revision of what does not use it.
func (m *Material) Revision() string {
	b, err := json.Marshal(m)
	if err != nil {
		panic("levigate: a raw material does not marshal: " + err.Error())
	}
	sum := sha256.Sum256(b)
	return hex.EncodeToString(sum[:8])
}
