package water

import (
	"sync"

	"levigate"
	"levigate/calc/water"
	"levigate/cite"
	"levigate/refdata"
	"levigate/work"
)

var kinds = map[levigate.Model]water.Kind{
	levigate.FloryHuggins: water.KindFloryHuggins, levigate.Pitzer: water.KindPitzer,
	levigate.GAB: water.KindGAB, levigate.Linear: water.KindLinear, levigate.Points: water.KindPoints,
}

// params hands a row of reference data to the equations.
func params(iso *levigate.Isotherm) water.Params {
	return water.Params{
		Kind: kinds[iso.Model],
		R:    iso.R, Chi: iso.Chi, Slope: iso.Slope, MolarMass: iso.MolarMass, Ions: iso.Ions,
		Beta0: iso.Beta0, Beta1: iso.Beta1, CPhi: iso.CPhi, MaxMolality: iso.MaxMolality,
		M0: iso.M0, C: iso.C, K: iso.K,
		AtOne: iso.AtOne.Typical, Enthalpy: iso.Enthalpy, At: iso.At, Holds: iso.Holds,
		Saturation: iso.Saturation, SatSlope: iso.SatSlope,
		Down: iso.Down, Up: iso.Up, FitLow: iso.FitLow, Grow: iso.Grow,
	}
}

// keptCauses are the causes that belong to one isotherm row, made once.
type keptCauses struct{ isotherm, factor work.Cause }

var causesOf sync.Map // *levigate.Isotherm -> *keptCauses

func keptFor(iso *levigate.Isotherm) *keptCauses {
	if k, ok := causesOf.Load(iso); ok {
		return k.(*keptCauses)
	}
	k := &keptCauses{
		isotherm: work.Cause{Key: "substance/" + iso.Name + "/isotherm", Name: "moisture curve of " + iso.Name,
			Grade: iso.Grade, Settle: "measure the water activity of the finished product in a closed cup at 25 °C"},
		factor: work.Cause{Key: "substance/" + iso.Name + "/in-polyol", Name: "what " + iso.Name + " keeps of it inside a polyol",
			Low: iso.InPolyol.Low, Mid: iso.InPolyol.Typical, High: iso.InPolyol.High, Grade: cite.Assumed,
			Settle: "measure the water activity of the finished product in a closed cup at 25 °C"},
	}
	if row, _ := refdata.Isotherm(iso.Name); row == iso {
		kept, _ := causesOf.LoadOrStore(iso, k)
		return kept.(*keptCauses)
	}
	return k
}

var unknownCauses, headCauses sync.Map // *levigate.Substance -> *work.Cause

func keptUnknown(sub *levigate.Substance) *work.Cause {
	if c, ok := unknownCauses.Load(sub); ok {
		return c.(*work.Cause)
	}
	c, _ := unknownCauses.LoadOrStore(sub, &work.Cause{
		Key: "substance/" + sub.INCI + "/no-isotherm", Name: sub.INCI + " counted as holding no water (nobody measured this)",
		High: 1, Grade: cite.Assumed, NotStated: sub.MolarMass == 0,
		Settle: "measure the water activity of the finished product in a closed cup at 25 °C",
	})
	return c.(*work.Cause)
}

func keptHead(sub *levigate.Substance) *work.Cause {
	if c, ok := headCauses.Load(sub); ok {
		return c.(*work.Cause)
	}
	c, _ := headCauses.LoadOrStore(sub, &work.Cause{
		Key: "substance/" + sub.INCI + "/head", Name: "the head of " + sub.INCI + ", counted as no solute",
		High: sub.SugarHead, Grade: cite.Assumed,
		Settle: "measure the water activity of the finished product in a closed cup at 25 °C",
	})
	return c.(*work.Cause)
}
