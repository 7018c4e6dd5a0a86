package validation

import (
	"math"

	"levigate/calc/water"
	"levigate/refdata"
	"levigate/work"
)

var _ = work.Prove(water.MethodUnifac, groupsOnGlycerol())

// groupsOnGlycerol holds the groups against the one polyol they are trusted
// for.
func groupsOnGlycerol() work.Check {
	list := points(func(p refdata.Point) bool { return p.Table == "scatchard1938" && p.Of("glycerol") })
	groups := water.Molecule{water.CH2WithOH: 2, water.CHWithOH: 1, water.OH: 3}
	return work.Check{What: "glycerol, isopiestic, root mean square miss in activity", Want: 0, Tol: 0.005, By: work.Published, From: list[0].From,
		Got: func() float64 {
			sum := 0.0
			for _, p := range list {
				ws, ww := p.Parts[0].Share/92.094, p.Water()/water.MolarMassWater
				d := water.UnifacPolyol(ww/(ww+ws), p.Celsius+273.15, groups) - p.Activity
				sum += d * d
			}
			return math.Sqrt(sum / float64(len(list)))
		}}
}
