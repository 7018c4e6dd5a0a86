package structure

import (
	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// Volume gives the volume of a mass, mL, from grams and g/mL.
func Volume(grams, density float64) float64 { return grams / density }

// Density gives the density of a mass in a volume, g/mL: what 100 g of a
// formula come to when the volumes of its lines add,
//
//	ρ = 100 / Σ (gᵢ/ρᵢ)
//
// Powders count with their true density, liquids without air. A product that
// weighs less than this holds air.
func Density(grams, volume float64) float64 { return grams / volume }

// MethodDensity is the method of structure.density and of the volumes.
var MethodDensity = work.Register(&work.Method{
	ID:    "structure.density",
	Title: "Density without air, from the volumes of the lines",
	Kind:  work.Procedure,
	Text: "Volumes add: 100 g over the sum of each line's grams by its density as delivered, 1/ρ = Σ wᵢ/ρᵢ. " +
		"Powders count with their true density. A product that weighs less than this holds air.",
	Unit:     quantity.GramPerML,
	Accuracy: "glycerol and water together shrink by up to 1.1 % of their volume, which is left out; about ±1 % in all",
	Sources:  []cite.Ref{{Key: "volk2018"}},
	Checks: []work.Check{
		{What: "1 g/mL and 0.8 g/mL in equal masses", By: work.Law, Want: 2 / (1/1.0 + 1/0.8), Tol: 1e-12,
			Got: func() float64 { return Density(100, Volume(50, 1)+Volume(50, 0.8)) }},
		{What: "70 oil 0.915, 20 glycerin 1.2613, 6 clay 2.60 and 4 emulsifier 1.10, worked by hand", By: work.Independent, Want: 1.0173, Tol: 5e-5,
			Got: func() float64 {
				return Density(100, Volume(70, 0.915)+Volume(20, 1.2613)+Volume(6, 2.60)+Volume(4, 1.10))
			}},
	},
})
