package weighing

import (
	"fmt"

	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// PremixDiluent gives the diluent, g, in which the active is pre-mixed so that
// a given take holds the active that is wanted:
//
//	diluent = active · take / wanted − active
//
// Exact. Both active and take are to be at least the minimum weight.
func PremixDiluent(active, take, wanted float64) float64 { return active*take/wanted - active }

// MethodPremixDiluent is the method of weighing.premix-diluent.
var MethodPremixDiluent = work.Register(&work.Method{
	ID:    "weighing.premix-diluent",
	Title: "Diluent of a pre-mix",
	Kind:  work.Equation,
	Text:  "active × take / wanted − active",
	Symbols: []work.Symbol{
		{Name: "active", Means: "what is weighed for the pre-mix", Unit: quantity.Gram, Min: 1e-6, Max: 1e6},
		{Name: "take", Means: "pre-mix that goes into the batch", Unit: quantity.Gram, Min: 1e-6, Max: 1e6},
		{Name: "wanted", Means: "active that the batch needs", Unit: quantity.Gram, Min: 1e-6, Max: 1e6},
	},
	Unit:     quantity.Gram,
	Accuracy: "exact",
	Sources:  []cite.Ref{{Key: "aliquot-slides"}},
	Checks: []work.Check{
		{What: "12 mg wanted, 120 mg weighed and taken", In: []float64{0.12, 0.12, 0.012}, Want: 1.08, Tol: 1e-12, By: work.Published, From: cite.Ref{Key: "aliquot-slides"}},
		{What: "2 mg wanted, 120 mg weighed, 125 mg taken", In: []float64{0.12, 0.125, 0.002}, Want: 7.38, Tol: 1e-12, By: work.Published, From: cite.Ref{Key: "least-weighable-chapter"}},
		{What: "a take of what is wanted needs no diluent", In: []float64{2, 0.5, 0.5}, Want: 0, Tol: 1e-12, By: work.Law},
	},
	Func: func(in []float64) float64 { return PremixDiluent(in[0], in[1], in[2]) },
	Refuses: func(in []float64) string {
		switch active, take, wanted := in[0], in[1], in[2]; {
		case wanted > take:
			return fmt.Sprintf("%g g of the active are wanted from %g g of pre-mix, which cannot hold more than itself", wanted, take)
		case wanted > active:
			return fmt.Sprintf("%g g of the active are wanted and only %g g go into the pre-mix", wanted, active)
		}
		return ""
	},
})
