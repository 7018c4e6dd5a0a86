package cost

import (
	"math"

	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// Formula gives what the raw materials in a kilogram of a formula cost, as
// weighed:
//
//	formula = Σ percentᵢ/100 · landedᵢ
//
// percents are % w/w and add up to 100; landed is money a kilogram, line by line.
// A line without a price makes the whole unknown: NaN, not a sum of the others.
// So does a list of another length.
func Formula(percents, landed []float64) float64 {
	if len(percents) != len(landed) {
		return math.NaN()
	}
	sum := 0.0
	for i, p := range percents {
		sum += p / 100 * landed[i]
	}
	return sum
}

// MethodFormula is the method of cost.formula.
var MethodFormula = work.Register(&work.Method{
	ID:    "cost.formula",
	Title: "Raw materials in a kilogram of a formula, as weighed",
	Kind:  work.Procedure,
	Text: "The sum over the lines of each one's share times its landed price, Σ wᵢ·landedᵢ. The q.s. line counts like any other. " +
		"Where one line has no price there is no cost, and a part of it is never given as the whole. In a costing every line is rounded to " +
		"four places and the total is the sum of what is shown.",
	Unit:     quantity.MoneyPerKilo,
	Accuracy: "exact for the prices put in; they are of the day they were paid",
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Checks: []work.Check{
		{What: "70 % at 4.00, 28 % at 2.50, 2 % at 90.00, by hand", By: work.Independent, Want: 5.30, Tol: 1e-12,
			Got: func() float64 { return Formula([]float64{70, 28, 2}, []float64{4, 2.5, 90}) }},
		{What: "one price for all is the cost", By: work.Law, Want: 7.25, Tol: 1e-12,
			Got: func() float64 { return Formula([]float64{12.5, 37.5, 50}, []float64{7.25, 7.25, 7.25}) }},
		{What: "a line cut in two costs the same", By: work.Law, Want: Formula([]float64{60, 40}, []float64{3, 11}), Tol: 1e-12,
			Got: func() float64 { return Formula([]float64{60, 15, 25}, []float64{3, 11, 11}) }},
	},
})
