package structure

import (
	"fmt"

	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// GrainFraction gives the share of the whole volume that is grains coarser
// than 20 µm:
//
//	grains / all
//
// Grains are 30 to 100 times a droplet: they sit between the droplets and do
// not crowd them as more oil would.
func GrainFraction(grains, all float64) float64 {
	if all == 0 {
		return 0
	}
	return grains / all
}

// MethodGrainFraction is the method of structure.grain-fraction.
var MethodGrainFraction = work.Register(&work.Method{
	ID:    "structure.grain-fraction",
	Title: "Grains coarser than 20 µm over the whole, by volume",
	Kind:  work.Equation,
	Text:  "grains / all",
	Symbols: []work.Symbol{
		{Name: "grains", Means: "volume of the grains", Unit: quantity.MLPer100g, Min: 0, Max: 100},
		{Name: "all", Means: "volume of everything, grains included", Unit: quantity.MLPer100g, Min: 1, Max: 200},
	},
	Unit:     quantity.One,
	Accuracy: "as the grains' true density",
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Checks: []work.Check{
		{What: "a quarter of the volume", In: []float64{1, 4}, By: work.Law, Want: 0.25, Tol: 1e-12},
		{What: "the walnut polish, worked by hand", In: []float64{5.2, 92.5}, By: work.Independent, From: cite.Ref{Key: "oddmarrow", At: "HP-01"}, Want: 0.056, Tol: 0.0005},
	},
	Func: func(in []float64) float64 { return GrainFraction(in[0], in[1]) },
	Refuses: func(in []float64) string {
		if in[0] > in[1] {
			return fmt.Sprintf("the grains are %g mL and everything, grains included, only %g mL", in[0], in[1])
		}
		return ""
	},
})
