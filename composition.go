package levigate

// Contained is one substance as declared in the whole formula.
type Contained struct {
	INCI      string
	Substance *Substance
	Percent   Range   // % w/w of the formula
	Volume    float64 // mL per 100 g of the formula; 0 when no density is on file
	Moles     float64 // mol per 100 g; 0 when no molar mass is on file
	From      []int   // lines, counted from 0
}

// Held is one part of what the formula truly holds.
type Held struct {
	Kind  Kind
	Name  string
	Grams Range // per 100 g of the formula
	From  []int
}

// Composition is a formula opened twice.
type Composition struct {
	Contained []Contained // as declared, by falling share
	Held      []Held      // as held: water, solutes, oils, powders, other
	// Unopened lists lines that could not be opened, counted from 0.
	Unopened []int
}
