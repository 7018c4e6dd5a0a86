package main

import "levigate/calc/water"

// Sizes from UNIFAC group volumes, over that of water.
var (
	propanediolSize = water.Molecule{water.CH3Alc: 1, water.CH2WithOH: 1, water.CHWithOH: 1, water.OH: 2}.Size()
	butanediolSize  = water.Molecule{water.CH3Alc: 1, water.CH2Alc: 1, water.CH2WithOH: 1, water.CHWithOH: 1, water.OH: 2}.Size()
	ethanediolSize  = water.Molecule{water.CH2WithOH: 2, water.OH: 2}.Size()
)

// alditolSize is that of the straight sugar alcohol with n carbons.
func alditolSize(n float64) float64 {
	return water.Molecule{water.CH2WithOH: 2, water.CHWithOH: n - 2, water.OH: n}.Size()
}

// polyols, glycerol first: it carries the gels.
var polyols = []plan{
	{
		name: "glycerol", molarMass: 92.094, start: 5, slope: true,
		// The hygrostat rows are alone below 0.75. They bend against any smooth
		// curve by what whole per cents round away, so the curve is asked to
		// stay within that of each; the isopiestic points give up 0.0007 for it,
		// on the side that calls a gel wetter.
		fit:    map[string]float64{"scatchard1938": isopiesticError, "crc-concentrative": handbookError, "miner1953-hygrostat": 0.00002},
		within: map[string]float64{"miner1953-hygrostat": 0.00594},
		aside:  []string{"hocking1980", "lane1925", "miner1953-vapour"},
		// Published points end at 0.756. Below, the recalled hygrostat
		// equation and a published Wilson fit lie up to 0.05 higher; the lower
		// side grows half as fast.
		band: band{down: 0.015, up: 0.015, low: 0.74, grow: 0.075}, basis: "measured", grade: "compiled",
		cites: []string{"astm-d5032"},
		note:  "below activity 0.756 every point is recalled; the band there also holds the hygrostat equation of ASTM D5032",
	},
	{
		name: "1,3-propanediol", molarMass: 76.095, start: 4, slope: true,
		fit: map[string]float64{"zaoui2016": pressureError}, band: band{down: 0.015, up: 0.015, grow: 0.12},
		basis: "measured", grade: "compiled", note: "one laboratory; its rows above 60 °C are kept aside",
	},
	{
		name: "propylene glycol", molarMass: 76.095, size: propanediolSize, slope: true,
		// All temperatures are fitted: near 25 °C there is next to nothing.
		fit: map[string]float64{"ashrae-pg-freezing": 0.005, "ashrae-pg-boiling": 0.03}, anyTemperature: true, band: band{down: 0.03, up: 0.03, low: 0.75, grow: 0.10},
		basis: "measured", grade: "estimated", note: "recalled freezing and boiling points only, so the curve at 25 °C lies between −51 and 132 °C",
	},
	{
		name: "butylene glycol", molarMass: 90.122, size: butanediolSize, like: "propylene glycol",
		band: band{down: 0.07, up: 0.075, low: 0.80, grow: 0.12}, basis: "relative", grade: "assumed", cites: []string{"marcolli2005", "norrish-memory"},
		note: "nothing measured: propylene glycol's interaction with its own size; at 50 % groups alone give 0.09 more (0.06 too much for propylene glycol), a recalled dilute constant 0.04 less",
	},
	{
		name: "ethylene glycol", molarMass: 62.068, size: ethanediolSize, slope: true,
		fit: map[string]float64{"crc-concentrative": handbookError}, anyTemperature: true, band: band{down: 0.01, up: 0.01, grow: 0.12},
		basis: "measured", grade: "compiled", note: "freezing points only, to −51 °C; temperature and strength change together in them",
	},
	{
		name: "sorbitol", molarMass: 182.172, size: alditolSize(6), norrish: norrish{k: 1.65, low: 0.85, sigma: 0.01},
		fit: map[string]float64{"sloan1975": 0.01}, band: band{down: 0.03, up: 0.03, low: 0.60, grow: 0.12},
		basis: "norrish", grade: "estimated", cites: []string{"norrish-table"},
		note: "Norrish K 1.65 ± 0.14 above 0.85 together with four points of the amorphous solid (± 0.02)",
	},
	{
		name: "xylitol", molarMass: 152.146, start: alditolSize(5), norrish: norrish{k: 1.66, low: 0.80, sigma: 0.005},
		fit:  map[string]float64{"ebrahimi2016": osmometryError},
		band: band{down: 0.006, up: 0.006, low: 0.92, grow: 0.12}, basis: "measured", grade: "compiled", cites: []string{"norrish-table"},
		note: "measured to 40 %; Norrish K 1.66, stated to 65 %, holds the strong end",
	},
	{
		name: "mannitol", molarMass: 182.172, size: alditolSize(6), fit: map[string]float64{"crc-concentrative": handbookError},
		band: diluteOnly, basis: "measured", grade: "compiled", note: "freezing points to 15 %, as far as it dissolves",
	},
	{
		name: "erythritol", molarMass: 122.120, size: alditolSize(4), norrish: norrish{k: 1.34, low: 0.90, sigma: 0.005},
		band: band{down: 0.03, up: 0.03, low: 0.90, grow: 0.12}, basis: "norrish", grade: "estimated", cites: []string{"norrish-table"},
		note: "nothing measured on file",
	},
	{
		name: "ethanol", molarMass: 46.069, start: 3, slope: true,
		fit:  map[string]float64{"tdl2017": pressureError, "crc-concentrative": 0.003},
		band: band{down: 0.02, up: 0.02, grow: 0.12}, basis: "measured", grade: "compiled",
		note: "evaporates with the water; its own vapour is not counted",
	},
}
