package cost

import (
	"math"
	"testing"

	"levigate/work/worktest"
)

func TestMethods(t *testing.T) { worktest.Run(t) }

// The worked cream, raw materials only, from the batch to the tube: two roads to
// one number.
func TestCreamCosted(t *testing.T) {
	const formula, batch = 9.20, 10000
	units := Units(batch, 97, 120, 50.3, 7)
	if got := Unit(formula, batch, units) * units; math.Abs(got-92) > 1e-9 {
		t.Errorf("the tubes together cost %g of 92.00", got)
	}
	if fill, unit := Fill(formula, 97, 50.3), Unit(formula, batch, units); fill >= unit {
		t.Errorf("a fill costs %g, a tube that can be sold %g: it carries the losses of filling", fill, unit)
	}
}

// What is unknown stays unknown.
func TestFormulaUnknown(t *testing.T) {
	if got := Formula([]float64{50, 50}, []float64{4}); !math.IsNaN(got) {
		t.Errorf("two lines and one price: %g", got)
	}
	if got := Formula([]float64{50, 50}, []float64{4, math.NaN()}); !math.IsNaN(got) {
		t.Errorf("a price that is not known: %g", got)
	}
}
