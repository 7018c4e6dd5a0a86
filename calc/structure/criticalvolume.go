package structure

import (
	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// linseed is the density of the oil that oil absorption is measured with, g/mL.
const linseed = 0.935

// CriticalVolume gives the share of the volume that a powder takes up at its
// oil absorption, where the oil just fills the gaps between grains that touch:
//
//	1/(1 + absorption*density/93.5)
//
// absorption is grams of linseed oil on 100 g of powder, density that of the
// grains, g/mL. Above it there is air in the gaps and the mass is a dough; a
// slurry that pours keeps well below, by common practice under six tenths of
// it. The test is done by hand and its end point with it: ±15 %.
func CriticalVolume(absorption, density float64) float64 {
	return 1 / (1 + absorption*density/(100*linseed))
}

// MethodCriticalVolume is the method of structure.critical-volume.
var MethodCriticalVolume = work.Register(&work.Method{
	ID:    "structure.critical-volume",
	Title: "Share of the volume a powder takes up when the oil just fills its gaps",
	Kind:  work.Equation,
	Text:  "1/(1 + absorption*density/93.5)",
	Symbols: []work.Symbol{
		{Name: "absorption", Means: "linseed oil taken up by 100 g of the powder", Unit: quantity.GramPer100g, Min: 5, Max: 500},
		{Name: "density", Means: "true density of the powder", Unit: quantity.GramPerML, Min: 0.8, Max: 8},
	},
	Unit:     quantity.One,
	Accuracy: "about ±15 %, the spread of the hand test; 93.5 is 100 times the density of linseed oil",
	Sources:  []cite.Ref{{Key: "cpvc-example"}},
	Checks: []work.Check{
		{What: "rutile of oil absorption 20 and density 4.2, from the two volumes: 100/4.2 mL of powder beside 20/0.935 mL of oil", In: []float64{20, 4.2},
			By: work.Independent, From: cite.Ref{Key: "cpvc-example"}, Want: (100 / 4.2) / (100/4.2 + 20/0.935), Tol: 1e-12},
		{What: "a powder as heavy as the oil, taking up its own weight: half and half", In: []float64{100, 0.935}, By: work.Law, Want: 0.5, Tol: 1e-12},
	},
	Func: func(in []float64) float64 { return CriticalVolume(in[0], in[1]) },
})
