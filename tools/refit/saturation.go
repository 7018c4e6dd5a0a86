package main

import (
	"math"

	"levigate/refdata"
)

// setSaturation gives a solute the activity over its saturated solution, from
// the table of deliquescence where it stands there, else from its solubility
// through its own curve; and how that changes with temperature, from the
// table's formula, else from its solubilities through its own curve.
func (r *result) setSaturation(known library) {
	if row, ok := find("measured/deliquescence", r.name); ok {
		r.params.Saturation = number(row, "activity")
		if row.Text("slope") != "" {
			r.params.SatSlope = number(row, "slope")
		}
		r.cite(row.Text("from"))
	}
	soluble := all("measured/solubility", r.name)
	if len(soluble) == 0 || r.params.SatSlope != 0 {
		return
	}
	a25 := 0.0
	at := func(row refdata.Row) (celsius, activity float64) {
		celsius = number(row, "celsius")
		return celsius, known.curve(r.name, celsius).Activity(100 / number(row, "grams"))
	}
	for _, row := range soluble {
		if celsius, a := at(row); celsius == 25 {
			a25 = a
		}
	}
	if r.params.Saturation == 0 {
		r.params.Saturation = round(a25, 3)
	}
	// Least squares through the value at 25 °C.
	xy, xx := 0.0, 0.0
	for _, row := range soluble {
		celsius, a := at(row)
		x := perKelvin(celsius)
		xy, xx = xy+x*math.Log(a/a25), xx+x*x
	}
	if xx > 0 {
		r.params.SatSlope = round(xy/xx, 0)
	}
	r.cite("recalled")
}

// Tables that say nothing about where crystals start: two measured solids and
// drops far beyond what dissolves, one was read off a figure to ±0.003.
var noGuide = map[string]bool{"he2006": true, "sloan1975": true, "miyawaki1997": true}

// keepSolutions lowers the saturation, or bends its change with temperature,
// so that nothing measured as a solution counts as crystals. Recalled
// solubilities through a curve give the change badly in the cold.
func (r *result) keepSolutions(points []refdata.Point) {
	const hair = 0.0005
	sat, slope := &r.params.Saturation, &r.params.SatSlope
	if *sat == 0 {
		return
	}
	var solutions []refdata.Point
	for _, p := range points {
		if p.Of(r.name) && !noGuide[p.Table] && p.Celsius >= coldest && p.Celsius <= hottest {
			solutions = append(solutions, p)
		}
	}
	for _, p := range solutions {
		if math.Abs(perKelvin(p.Celsius)) < 1e-6 {
			*sat = math.Min(*sat, round(p.Activity-hair, 4))
		}
	}
	for _, p := range solutions {
		x := perKelvin(p.Celsius)
		if math.Abs(x) < 1e-6 || *sat*math.Exp(*slope*x) <= p.Activity-hair {
			continue
		}
		// Whole kelvins, rounded to the side that keeps the solution.
		if bound := math.Log((p.Activity-hair) / *sat) / x; x > 0 {
			*slope = math.Floor(bound)
		} else {
			*slope = math.Ceil(bound)
		}
	}
}

func (r *result) cite(key string) {
	for _, k := range r.worked.sources {
		if k == key {
			return
		}
	}
	r.worked.sources = append(r.worked.sources, key)
}

// all lists the rows of a table that are of a substance.
func all(table, substance string) []refdata.Row {
	t, err := refdata.Open(table)
	if err != nil {
		panic("refit: " + err.Error())
	}
	var out []refdata.Row
	for _, row := range t.Rows {
		if row.Text("substance") == substance {
			out = append(out, row)
		}
	}
	return out
}

func find(table, substance string) (refdata.Row, bool) {
	rows := all(table, substance)
	if len(rows) == 0 {
		return refdata.Row{}, false
	}
	return rows[0], true
}

func number(r refdata.Row, column string) float64 {
	v, err := r.Number(column)
	if err != nil {
		panic("refit: " + err.Error())
	}
	return v
}
