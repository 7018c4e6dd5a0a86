package cost

import (
	"levigate/quantity"
	"levigate/work"
)

// The symbols that several methods share.
var (
	formulaCost = work.Symbol{Name: "formula", Means: "raw materials in a kilogram as weighed", Unit: quantity.MoneyPerKilo, Min: 0, Max: 1e9}
	makingYield = work.Symbol{Name: "yield", Means: "bulk made, in % of what was weighed", Unit: quantity.Percent, Min: 1, Max: 100}
	batchMass   = work.Symbol{Name: "batch", Means: "what was weighed for the batch", Unit: quantity.Gram, Min: 1, Max: 1e9}
	unitCount   = work.Symbol{Name: "units", Means: "units that can be sold", Unit: quantity.One, Min: 1, Max: 1e7}
)

// ouncesPerKilo turns a price a kilogram into one an ounce, as some cases are
// printed; poundsPerKilo likewise.
const (
	ouncesPerKilo = 1000 / 28.349523125
	poundsPerKilo = 1000 / 453.59237
)
