package cost

import (
	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// Landed gives what a kilogram of a raw material costs once it stands on the
// shelf:
//
//	landed = (goods + freight + other) · 1000 / mass
//
// goods, freight and other (duty, bank and handling fees) are amounts of one
// currency for one delivery, without tax that is got back; mass is what was
// received, g. Where several goods share one freight, each takes a part of it by
// mass or by value: that is the buyer's choice and made before. Exact for what is
// put in.
func Landed(goods, freight, other, mass float64) float64 {
	return (goods + freight + other) * 1000 / mass
}

// MethodLanded is the method of cost.landed.
var MethodLanded = work.Register(&work.Method{
	ID:    "cost.landed",
	Title: "Landed price of a raw material",
	Kind:  work.Equation,
	Text:  "(goods + freight + other) × 1000 / mass",
	Symbols: []work.Symbol{
		{Name: "goods", Means: "paid for the goods, without tax that is got back", Unit: quantity.Money, Min: 0, Max: 1e9},
		{Name: "freight", Means: "freight, or this material's part of it", Unit: quantity.Money, Min: 0, Max: 1e9},
		{Name: "other", Means: "duty, bank and handling fees", Unit: quantity.Money, Min: 0, Max: 1e9},
		{Name: "mass", Means: "mass received", Unit: quantity.Gram, Min: 0.001, Max: 1e9},
	},
	Unit:     quantity.MoneyPerKilo,
	Accuracy: "exact for what is put in; a freight shared between goods is as fair as the sharing",
	Sources:  []cite.Ref{{Key: "maker-landed"}},
	Checks: []work.Check{
		{What: "10 lb of shea butter for 65.49, without freight, an ounce", By: work.Published, From: cite.Ref{Key: "maker-landed"}, Want: 0.4093, Tol: 5e-5,
			Got: func() float64 { return Landed(65.49, 0, 0, 10*453.59237) / ouncesPerKilo }},
		{What: "the same with 11.18 of freight, an ounce", By: work.Published, From: cite.Ref{Key: "maker-landed"}, Want: 0.4792, Tol: 5e-5,
			Got: func() float64 { return Landed(65.49, 11.18, 0, 10*453.59237) / ouncesPerKilo }},
		{What: "17.50 for 7 lb and 38 freight on 25 lb, a pound: 2.50 + 1.52 = 4.02 (the post that has these figures adds them to 3.07)", By: work.Independent, From: cite.Ref{Key: "maker-batch"}, Want: 4.02, Tol: 1e-9,
			Got: func() float64 { return Landed(17.50, 38.0*7/25, 0, 7*453.59237) / poundsPerKilo }},
		{What: "half a pound of it (the post has 1.54)", By: work.Independent, From: cite.Ref{Key: "maker-batch"}, Want: 2.01, Tol: 1e-9,
			Got: func() float64 { return Landed(17.50, 38.0*7/25, 0, 7*453.59237) / poundsPerKilo / 2 }},
		{What: "ten such deliveries as one", In: []float64{80, 12, 8, 2500}, Want: Landed(800, 120, 80, 25000), Tol: 1e-12, By: work.Law},
		{What: "100 in all for 2.5 kg, by hand", In: []float64{80, 12, 8, 2500}, Want: 40, Tol: 1e-12, By: work.Independent},
	},
	Func: func(in []float64) float64 { return Landed(in[0], in[1], in[2], in[3]) },
})
