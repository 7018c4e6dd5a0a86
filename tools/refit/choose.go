package main

import (
	"fmt"
	"slices"

	"levigate/calc/numeric"
	"levigate/calc/water"
	"levigate/refdata"
)

// chosen lists the points a plan is fitted on.
func (p plan) chosen(points []refdata.Point) []refdata.Point {
	var out []refdata.Point
	for _, pt := range points {
		if p.takes(pt) {
			out = append(out, pt)
		}
	}
	return append(out, p.norrish.points(p)...)
}

// takes reports whether a point is fitted.
func (p plan) takes(pt refdata.Point) bool {
	if _, listed := p.fit[pt.Table]; !listed || !p.anyTemperature && p.with == "" && !stated(pt) {
		return false
	}
	if p.with != "" {
		return len(pt.Parts) == 2 && pt.Has(p.name) && pt.Has(p.with) && (p.only == nil || p.only(pt))
	}
	return pt.Of(p.name)
}

// stated reports whether a point lies where isotherms are stated to hold.
func stated(pt refdata.Point) bool { return pt.Celsius >= coldest && pt.Celsius <= hottest }

func (p plan) sigma(pt refdata.Point) float64 {
	if pt.Table == norrishTable {
		return p.norrish.sigma
	}
	return p.fit[pt.Table]
}

const norrishTable = "norrish"

// points makes points at even steps of activity from Norrish's constant.
func (n norrish) points(p plan) []refdata.Point {
	var out []refdata.Point
	if n.k == 0 {
		return nil
	}
	for a := 0.99; a > n.low-1e-9; a -= 0.02 {
		xs, err := numeric.Root(func(x float64) float64 { return water.Norrish(x, n.k) - a }, 0, 0.5, 1e-12)
		if err != nil {
			panic(fmt.Sprintf("refit: %s: %v", p.name, err))
		}
		ws := xs * p.molarMass
		share := ws / (ws + (1-xs)*water.MolarMassWater)
		out = append(out, refdata.Point{Table: norrishTable, Celsius: 25, Activity: a, Parts: []refdata.Part{{Substance: p.name, Share: share}}})
	}
	return out
}

// tables gives the sources of the points a plan is fitted on.
func (p plan) tables(points []refdata.Point) []string {
	var out []string
	for _, pt := range points {
		if p.takes(pt) && !slices.Contains(out, pt.From.Key) {
			out = append(out, pt.From.Key)
		}
	}
	return out
}
