package validation

import (
	"levigate/calc/numeric"
	"levigate/calc/water"
	"levigate/refdata"
)

// summed gives the water activity of a point's solution by the program's own
// sum of isotherms.
func summed(p refdata.Point) float64 {
	s := water.Sum{Solution: 1}
	for _, part := range p.Parts {
		iso, _ := refdata.Isotherm(part.Substance)
		s.Holders = append(s.Holders, water.Holder{Curve: curve(part.Substance, p.Celsius), Grams: part.Share, Factor: 1,
			Osmoles: part.Share / iso.MolarMass * iso.Ions})
	}
	return s.Activity(p.Water())
}

// isopiestic gives the same by a second, slow and plain version: the activity
// at which the parts, each alone, hold the water there is, found by bracketing.
func isopiestic(p refdata.Point) (float64, error) {
	return numeric.Root(func(a float64) float64 {
		missing := -p.Water()
		for _, part := range p.Parts {
			w, _ := curve(part.Substance, p.Celsius).Water(a)
			missing += part.Share * w
		}
		return missing
	}, 1e-6, 1-1e-9, 1e-11)
}
