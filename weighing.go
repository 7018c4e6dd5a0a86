package levigate

import "levigate/quantity"

// WeighingList is what goes on the balance for one batch, in the order of the
// phases. The grams of its lines add up to the batch exactly.
type WeighingList struct {
	Formula   *Formula
	Batch     quantity.Decimal // g
	Tolerance quantity.Decimal // by how much a line may be off, in % of itself
	Balances  []Balance
	Minima    []quantity.Decimal // each balance's minimum weight at the tolerance, rounded up
	Lines     []Weighing
	Phases    []PhaseGrams
	// Absorbed is what the line that takes up the rounding weighs more than its
	// percentage says, g; below zero when less.
	Absorbed quantity.Decimal
	Notes    []string // about the list as a whole
}

// PhaseGrams is what one phase weighs.
type PhaseGrams struct {
	Phase string
	Grams quantity.Decimal
}

// Weighing is one line on the balance.
type Weighing struct {
	Line    int // of the formula, counted from 0
	Phase   string
	Name    string // the raw material's, or as typed when nothing was found
	Code    string
	Percent quantity.Decimal
	Grams   quantity.Decimal // to weigh
	// Shows is Grams as the balance can show it; it differs where the line takes
	// up roundings finer than its balance.
	Shows quantity.Decimal
	// From and To are the least and the most the balance may show for the line to
	// be within the tolerance; To is no more than Shows where more could pass a
	// limit on file. Both are zero when the balance can show nothing that near.
	From, To    quantity.Decimal
	Balance     int              // index into Balances
	Minimum     quantity.Decimal // of that balance
	Uncertainty float64          // of the weighing, as a fraction of it at k = 2
	Can         CanWeigh
	Portions    int              // 1 unless over capacity
	Portion     quantity.Decimal // most in one portion, g
	// SmallestBatch is the least batch in which the line could be weighed
	// directly on one of the balances; set for a line that is too little.
	SmallestBatch quantity.Decimal
	Premix        *Premix // proposed for a line that is too little; nil when no line of the formula takes it up
	Absorbs       bool    // takes up what rounding the others left over
	Notes         []string
}

// CanWeigh says whether a line can be weighed on the balances at hand.
type CanWeigh string

// The answers.
const (
	Directly   CanWeigh = "directly"
	TooLittle  CanWeigh = "below-minimum" // no balance at hand weighs it to within the tolerance
	InPortions CanWeigh = "over-capacity" // in portions, then
	Nothing    CanWeigh = "nothing"       // a line of 0 %
)

// Premix is a pre-dilution: Active of the line and Diluent of another are mixed,
// and Take of the mix goes into the batch. What Take brings of the other line is
// left out there.
type Premix struct {
	In          int              // the line diluted into, counted from 0
	Name        string           // its raw material
	Parts       quantity.Decimal // parts of diluent on one of the line, rounded
	Active      quantity.Decimal // g
	Diluent     quantity.Decimal // g
	Take        quantity.Decimal // g
	Left        quantity.Decimal // g of the other line still to weigh by itself, after this and the pre-mixes before it
	Balance     int              // index into Balances
	Uncertainty float64          // of the active delivered, as a fraction at k = 2
	Dissolves   bool             // it is to dissolve; false when two powders are rubbed together
	Watery      bool             // the diluent is mostly water: use the mix the same day
}
