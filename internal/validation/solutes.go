package validation

import (
	"levigate/calc/water"
	"levigate/refdata"
	"levigate/work"
)

// asked is the accuracy asked of a solute's isotherm on a table of it alone in
// water.
var asked = []struct {
	solute, table string
	tol           float64
}{
	{"glycerol", "scatchard1938", 0.001},
	{"glycerol", "crc-concentrative", 0.001},
	{"glycerol", "hocking1980", 0.005},
	{"1,3-propanediol", "zaoui2016", 0.014},
	{"propylene glycol", "ashrae-pg-freezing", 0.006},
	{"ethylene glycol", "crc-concentrative", 0.004},
	{"ethanol", "crc-concentrative", 0.013},
	{"ethanol", "tdl2017", 0.013},
	{"sorbitol", "sloan1975", 0.02},
	{"xylitol", "ebrahimi2016", 0.001},
	{"mannitol", "crc-concentrative", 0.001},
	{"sucrose", "robinson1934", 0.0015}, // kept aside from the fit
	{"sucrose", "crc-concentrative", 0.001},
	{"sucrose", "miyawaki1997", 0.005},
	{"sucrose", "sloan1975", 0.04},
	{"glucose", "ebrahimi2016", 0.001},
	{"glucose", "crc-concentrative", 0.001},
	{"fructose", "he2006", 0.007},
	{"fructose", "crc-concentrative", 0.001},
	{"fructose", "sloan1975", 0.03}, // kept aside
	{"maltose", "crc-concentrative", 0.001},
	{"lactose", "crc-concentrative", 0.001},
	{"xylose", "ebrahimi2016", 0.001},
	{"arabinose", "ebrahimi2016", 0.001},
	{"glucose syrup", "sloan1975", 0.03},
	{"urea", "scatchard1938", 0.001},
	{"urea", "crc-concentrative", 0.003},
	{"urea", "miyawaki1997", 0.003}, // kept aside
	{"serine", "jct2014serine", 0.001},
	{"lactic acid", "crc-concentrative", 0.001},
	{"citric acid", "crc-concentrative", 0.001},
}

var _ = work.Prove(water.MethodFloryHuggins, soluteChecks()...)

func soluteChecks() []work.Check {
	var out []work.Check
	for _, a := range asked {
		out = append(out, rmsCheck(a.solute, a.table, a.tol, func(p refdata.Point) bool { return p.Of(a.solute) }))
	}
	return out
}
