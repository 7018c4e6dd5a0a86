package main

import "levigate/calc/water"

var (
	hexoseSize       = water.Molecule{water.CH2WithOH: 1, water.CHWithOH: 4, water.CHOEther: 1, water.OH: 5}.Size()
	pentoseSize      = water.Molecule{water.CHWithOH: 4, water.CH2Ether: 1, water.OH: 4}.Size()
	disaccharideSize = water.Molecule{water.CH2WithOH: 2, water.CHWithOH: 7, water.CHOEther: 3, water.OH: 8}.Size()
	// What one glucose adds to a chain.
	chainSize = water.Molecule{water.CH2WithOH: 1, water.CHWithOH: 3, water.CHOEther: 2, water.OH: 3}.Size()
)

const chainMass = 162.141

// glucanSize is that of a chain of glucoses of molar mass m.
func glucanSize(m float64) float64 { return (m-water.MolarMassWater)/chainMass*chainSize + 1 }

// Number-average molar mass from the dextrose equivalent: 18016 g/mol over it.
const (
	syrupMass   = 18016.0 / 42
	dextrinMass = 18016.0 / 15
)

var sugars = []plan{
	{
		name: "sucrose", molarMass: 342.297, start: 9,
		fit:   map[string]float64{"crc-concentrative": handbookError, "miyawaki1997": digitisedError, "sloan1975": 0.01},
		aside: []string{"robinson1934"}, band: band{down: 0.005, up: 0.005, low: 0.84, grow: 0.18}, basis: "measured", grade: "compiled",
		note: "solutions end at 0.836; below, four points of the amorphous solid hold the curve",
	},
	{
		name: "glucose", molarMass: 180.156, size: hexoseSize, slope: true,
		fit:  map[string]float64{"ebrahimi2016": osmometryError, "crc-concentrative": handbookError},
		band: wellMeasured, basis: "measured", grade: "compiled",
	},
	{
		name: "fructose", molarMass: 180.156, start: 9,
		fit:   map[string]float64{"he2006": hygrometerError, "crc-concentrative": handbookError},
		aside: []string{"sloan1975"}, band: band{down: 0.01, up: 0.01, grow: 0.12}, basis: "measured", grade: "compiled",
		note: "one laboratory below 0.96; amorphous fructose and whole honeys are kept aside as the test",
	},
	{
		name: "maltose", molarMass: 342.297, size: disaccharideSize, fit: map[string]float64{"crc-concentrative": handbookError},
		band: diluteOnly, basis: "measured", grade: "compiled",
	},
	{
		name: "lactose", molarMass: 342.297, size: disaccharideSize, fit: map[string]float64{"crc-concentrative": handbookError},
		band: diluteOnly, basis: "measured", grade: "compiled",
	},
	{
		name: "xylose", molarMass: 150.130, size: pentoseSize, fit: map[string]float64{"ebrahimi2016": osmometryError},
		band: wellMeasured, basis: "measured", grade: "compiled",
	},
	{
		name: "arabinose", molarMass: 150.130, size: pentoseSize, fit: map[string]float64{"ebrahimi2016": osmometryError},
		band: wellMeasured, basis: "measured", grade: "compiled",
	},
	{
		name: "glucose syrup", molarMass: syrupMass, size: glucanSize(syrupMass), fit: map[string]float64{"sloan1975": sorptionError},
		band: band{down: 0.03, up: 0.03, grow: 0.12}, basis: "measured", grade: "estimated",
		note: "dextrose equivalent 42 assumed; four points of the amorphous solid",
	},
	{
		name: "maltodextrin", molarMass: dextrinMass, size: glucanSize(dextrinMass), like: "glucose syrup",
		band: band{down: 0.05, up: 0.07, low: 0.75, grow: 0.12}, basis: "relative", grade: "assumed",
		note: "nothing measured: glucose syrup's interaction with the size of dextrose equivalent 15, less where that would part it from water",
	},
}
