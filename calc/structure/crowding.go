package structure

import (
	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// InternalFraction gives the crowding of an emulsion from the volumes of its
// internal and its continuous liquid:
//
//	φ = inside / (inside + outside)
//
// Surfactants and gums lie in the continuous liquid; grains are left out.
// Equal spheres at random touch near 0.64 and pack closest at 0.74; droplets of
// many sizes, and flattened ones, go further.
func InternalFraction(inside, outside float64) float64 {
	if inside+outside == 0 {
		return 0
	}
	return inside / (inside + outside)
}

// MethodInternalFraction is the method of structure.internal-fraction.
var MethodInternalFraction = work.Register(&work.Method{
	ID:    "structure.internal-fraction",
	Title: "Crowding: oil over oil and liquid polar phase, by volume",
	Kind:  work.Equation,
	Text:  "inside / (inside + outside)",
	Symbols: []work.Symbol{
		{Name: "inside", Means: "volume of the internal liquid, with fine powder that sits in it", Unit: quantity.MLPer100g, Min: 0, Max: 1000},
		{Name: "outside", Means: "volume of the continuous liquid, with fine powder that sits in it", Unit: quantity.MLPer100g, Min: 1e-6, Max: 1000},
	},
	Unit:     quantity.One,
	Accuracy: "as the densities; where fine powder sits decides most of it, so the band reaches from all of it in the polyol to all of it in the oil",
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Checks: []work.Check{
		{What: "equal volumes", In: []float64{3, 3}, By: work.Law, Want: 0.5, Tol: 1e-12},
		{What: "no oil", In: []float64{0, 3}, By: work.Law, Want: 0, Tol: 0},
		{What: "the walnut polish, droplets only, worked by hand", In: []float64{61.1, 21.2}, By: work.Independent, From: cite.Ref{Key: "oddmarrow", At: "HP-01"}, Want: 0.74, Tol: 0.005},
		{What: "the same with its fine powder in the polyol", In: []float64{61.1, 26.3}, By: work.Independent, From: cite.Ref{Key: "oddmarrow", At: "HP-01"}, Want: 0.70, Tol: 0.005},
	},
	Func: func(in []float64) float64 { return InternalFraction(in[0], in[1]) },
})
