package main

import (
	"levigate/calc/water"
	"levigate/refdata"
)

// salts come first: the mixtures the amino acids are fitted on need them.
var salts = []plan{
	{
		name: "sodium chloride", molarMass: 58.440, ions: 2, salt: water.Salt{Beta0: 0.0765, Beta1: 0.2664, CPhi: 0.00127}, molality: 6,
		slope: true,
		fit:   map[string]float64{"crc-concentrative": handbookError}, band: band{down: 0.003, up: 0.003, grow: 0.15}, basis: "measured", grade: "reviewed",
		cites: []string{"pitzer1973"}, note: "parameters at 25 °C as published; the change of β0 with temperature is fitted to freezing points",
	},
	{
		name: "potassium chloride", molarMass: 74.548, ions: 2, salt: water.Salt{Beta0: 0.04835, Beta1: 0.2122, CPhi: -0.00084}, molality: 4.8,
		slope: true,
		fit:   map[string]float64{"crc-concentrative": handbookError}, aside: []string{"guendouzi2001"},
		band: band{down: 0.003, up: 0.003, grow: 0.15}, basis: "measured", grade: "reviewed",
		cites: []string{"pitzer1973"}, note: "parameters at 25 °C recalled, as published; the change of β0 with temperature is fitted to freezing points",
	},
	{
		name: "sodium acetate", molarMass: 82.034, ions: 2, salt: water.Salt{Beta0: 0.1426, Beta1: 0.3237, CPhi: -0.00629}, molality: 3.5,
		aside: []string{"crc-concentrative"}, band: band{down: 0.005, up: 0.005, grow: 0.15}, basis: "measured", grade: "reviewed",
		cites: []string{"pitzer1973"}, note: "parameters recalled, as published; beyond 3.5 mol/kg by continuation",
	},
	{
		name: "sodium lactate", molarMass: 112.060, ions: 2, salt: propionate, molality: 3,
		band: band{down: 0.04, up: 0.04, grow: 0.12}, basis: "relative", grade: "assumed", cites: []string{"pitzer1973"},
		note: "nothing measured: sodium propionate, the nearest published relative (recalled), to 3 mol/kg and by continuation beyond; 60 % is 13.4 mol/kg",
	},
	{
		name: "sodium pca", molarMass: 151.097, ions: 2, salt: propionate, molality: 3,
		band: band{down: 0.05, up: 0.05, grow: 0.12}, basis: "relative", grade: "assumed", cites: []string{"pitzer1973"},
		note: "nothing measured: sodium propionate (recalled) to 3 mol/kg and by continuation beyond",
	},
}

var propionate = water.Salt{Beta0: 0.1875, Beta1: 0.2789, CPhi: -0.01277}

// saltMolality is that of the second part of a mixture, mol/kg of water.
func saltMolality(p refdata.Point, molarMass float64) float64 {
	return p.Parts[1].Share / molarMass / p.Water() * 1000
}

var (
	glycineSize = water.Molecule{water.CH2NH2: 1, water.COOH: 1}.Size()
	alanineSize = water.Molecule{water.CH3: 1, water.CHNH2: 1, water.COOH: 1}.Size()
	prolineSize = water.Molecule{water.CH2NH: 1, water.CH2: 2, water.CH: 1, water.COOH: 1}.Size()
	serineSize  = water.Molecule{water.CH2WithOH: 1, water.OH: 1, water.CHNH2: 1, water.COOH: 1}.Size()
	betaineSize = water.Molecule{water.CH3N: 1, water.CH3: 2, water.CH2: 1, water.COO: 1}.Size()
	lacticSize  = water.Molecule{water.CH3: 1, water.CHWithOH: 1, water.OH: 1, water.COOH: 1}.Size()
	citricSize  = water.Molecule{water.CH2: 2, water.CWithOH: 1, water.OH: 1, water.COOH: 3}.Size()
)

// others: amino acids, acids, urea and what is left.
var others = []plan{
	{
		name: "urea", molarMass: 60.056, start: 3, slope: true,
		fit:   map[string]float64{"scatchard1938": isopiesticError, "crc-concentrative": handbookError},
		aside: []string{"miyawaki1997"}, band: wellMeasured, basis: "measured", grade: "compiled",
	},
	{
		name: "glycine", molarMass: 75.067, size: glycineSize, fit: map[string]float64{"held2014": osmoticError}, with: "sodium chloride",
		aside: []string{"held2014"}, band: band{down: 0.006, up: 0.006, grow: 0.15}, basis: "measured", grade: "compiled",
		note: "fitted in sodium chloride solutions, tested in potassium chloride; a second source in sodium chloride scatters by 0.01 and is not used",
	},
	{
		name: "alanine", molarMass: 89.094, size: alanineSize, fit: map[string]float64{"held2014": osmoticError}, with: "sodium chloride",
		band: band{down: 0.008, up: 0.008, grow: 0.15}, basis: "measured", grade: "compiled",
		note: "fitted in sodium chloride solutions; nothing else to test it on",
	},
	{
		name: "proline", molarMass: 115.132, size: prolineSize, fit: map[string]float64{"held2014": osmoticError}, with: "potassium chloride",
		only:  func(p refdata.Point) bool { return saltMolality(p, 74.548) < 2 },
		aside: []string{"held2014"}, band: band{down: 0.008, up: 0.008, grow: 0.15}, basis: "measured", grade: "compiled",
		note: "fitted on the whole run in 1 mol/kg potassium chloride, tested on the whole run in 3 mol/kg; same laboratory and salt, so a weak test",
	},
	{
		name: "serine", molarMass: 105.093, size: serineSize, fit: map[string]float64{"jct2014serine": osmoticError},
		band: diluteOnly, basis: "measured", grade: "compiled",
	},
	{
		name: "betaine", molarMass: 117.148, size: betaineSize, like: "proline",
		band: unmeasured, basis: "relative", grade: "assumed",
		note: "nothing measured: proline's interaction with its own size",
	},
	{
		name: "lactic acid", molarMass: 90.078, size: lacticSize, fit: map[string]float64{"crc-concentrative": handbookError},
		band: diluteOnly, basis: "measured", grade: "compiled", note: "freezing points to 20 %; strong acid also holds its own esters, which bring water",
	},
	{
		name: "citric acid", molarMass: 192.123, start: citricSize,
		fit:  map[string]float64{"crc-concentrative": handbookError, "saturated": 0.01},
		band: band{down: 0.01, up: 0.01, low: 0.96, grow: 0.15}, basis: "measured", grade: "compiled",
		note: "freezing points to 30 % and one recalled saturated solution",
	},
	{
		name: "choline chloride", molarMass: 139.624, ions: 2, start: 5, fit: map[string]float64{"wu2012": pressureError}, with: "urea",
		only:  func(p refdata.Point) bool { return p.Celsius > 55 },
		aside: []string{"wu2012"}, doubt: func(p refdata.Point) bool { return p.Celsius < 55 },
		band: band{down: 0.03, up: 0.03, grow: 0.12}, basis: "measured", grade: "estimated",
		note: "fitted in urea solutions at 60 and 70 °C; below that the source contradicts itself",
	},
}

// allPlans lists every solute in the order it can be fitted.
func allPlans() []plan {
	var out []plan
	for _, group := range [][]plan{salts, polyols, sugars, others, hydrates} {
		out = append(out, group...)
	}
	return out
}
