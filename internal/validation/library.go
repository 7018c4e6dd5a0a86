package validation

import (
	"levigate"
	"levigate/calc/water"
	"levigate/refdata"
)

// The temperatures isotherms are held against data at, °C.
const (
	coldest = -16.0
	hottest = 50.0
)

var kinds = map[levigate.Model]water.Kind{
	levigate.FloryHuggins: water.KindFloryHuggins, levigate.Pitzer: water.KindPitzer,
	levigate.GAB: water.KindGAB, levigate.Linear: water.KindLinear, levigate.Points: water.KindPoints,
}

// params lays an isotherm's row out as calc/water wants it.
func params(iso *levigate.Isotherm) water.Params {
	return water.Params{
		Kind: kinds[iso.Model], MolarMass: iso.MolarMass, Ions: iso.Ions,
		R: iso.R, Chi: iso.Chi, Slope: iso.Slope,
		Beta0: iso.Beta0, Beta1: iso.Beta1, CPhi: iso.CPhi, MaxMolality: iso.MaxMolality,
		M0: iso.M0, C: iso.C, K: iso.K, AtOne: iso.AtOne.Typical, Enthalpy: iso.Enthalpy, At: iso.At, Holds: iso.Holds,
		Saturation: iso.Saturation, SatSlope: iso.SatSlope,
		Down: iso.Down, Up: iso.Up, FitLow: iso.FitLow, Grow: iso.Grow,
	}
}

// curve makes the curve on file for a substance.
func curve(name string, celsius float64) *water.Curve {
	iso, ok := refdata.Isotherm(name)
	if !ok {
		panic("validation: no isotherm named " + name)
	}
	c := water.NewCurve(params(iso), celsius)
	return &c
}

// known reports whether every part of a point has an isotherm.
func known(p refdata.Point) bool {
	for _, part := range p.Parts {
		if _, ok := refdata.Isotherm(part.Substance); !ok {
			return false
		}
	}
	return true
}
