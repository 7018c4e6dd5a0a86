package main

import (
	"levigate/calc/numeric"
	"levigate/calc/water"
	"levigate/refdata"
)

// isopiestic gives the water activity of a point's solution by the rule of
// Zdanovskii, Stokes and Robinson: the activity at which the water its parts
// hold, each alone, adds up to the water there is.
func isopiestic(p refdata.Point, curveOf func(substance string, celsius float64) *water.Curve) float64 {
	if len(p.Parts) == 1 {
		return curveOf(p.Parts[0].Substance, p.Celsius).Activity(p.Water() / p.Parts[0].Share)
	}
	curves := make([]*water.Curve, len(p.Parts))
	for i, part := range p.Parts {
		curves[i] = curveOf(part.Substance, p.Celsius)
	}
	excess := func(a float64) float64 {
		sum := -p.Water()
		for i, part := range p.Parts {
			w, _ := curves[i].Water(a)
			sum += part.Share * w
		}
		return sum
	}
	a, err := numeric.Root(excess, 1e-6, 1-1e-9, 1e-11)
	if err != nil {
		panic("refit: " + p.At + ": " + err.Error())
	}
	return a
}
