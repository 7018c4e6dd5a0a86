package levigate

import (
	"time"

	"levigate/quantity"
)

// Subject is what a reading was taken of.
type Subject struct {
	Kind string // "material", "lot", "version", "batch", "pack", "balance", "stirrer"
	Key  string // the material's name or code; the formula's code
}

// Reading is one measurement. A reading of a property (the water of a raw
// material) takes the estimate's place in every calculation of that subject; a
// reading of a calculated figure becomes the figure and calibrates the model.
type Reading struct {
	ID         string
	Subject    Subject
	Property   string // "water", "density", or a figure's id: "water.activity"
	Value      float64
	Plus       float64 // half-width of the 90 % range; 0 when not stated
	Unit       quantity.Unit
	Conditions Conditions
	Instrument string
	Repeats    int
	After      time.Duration // how long the product rested before it was taken
	At         time.Time
	By         string
}

// Conditions are what a formula check is made for.
type Conditions struct {
	Temperature float64 // °C
	Humidity    float64 // of the air asked about, % RH; 0 when none was
}

// The isotherms were compared with measurements between these, °C; outside
// them figures are still given, with a wider band.
const ProvedFrom, ProvedTo = 5.0, 40.0

// Room is the temperature a check is made at unless asked otherwise.
const Room = 25.0
