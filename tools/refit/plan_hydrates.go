package main

// hydrates: salts of scrubs and baths, most of them bought with water in their
// crystals. A strong solution of a salt with several charges is nothing a size
// of the molecule says anything about: with points on file R is fitted too, and
// where only the saturated one is, it is that of the dry crystal over water's.
// The form bends too little for the two chlorides, which hold water harder than
// it can say: their band is as wide as that.
var hydrates = []plan{
	hydrate("magnesium sulfate", 120.361, 2, 0, 2.5),
	hydrate("magnesium chloride", 95.205, 3, 0, 3),
	hydrate("calcium chloride", 110.978, 3, 0, 3),
	hydrate("sodium carbonate", 105.988, 3, 2.31, 0),
	hydrate("sodium sulfate", 142.036, 3, 2.95, 0),
	hydrate("sodium bicarbonate", 84.006, 2, 2.11, 0),
}

func hydrate(name string, molarMass, ions, size, start float64) plan {
	return plan{
		name: name, molarMass: molarMass, ions: ions, size: size, start: start, fit: map[string]float64{"saturated-salts": 0.01},
		band: band{down: 0.03, up: 0.03, grow: 0.15}, basis: "relative", grade: "estimated",
		note: "recalled points, the saturated solution among them",
	}
}
