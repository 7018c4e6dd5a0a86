package main

import (
	"fmt"
	"strconv"
	"strings"

	"levigate/calc/water"
	"levigate/quantity"
)

var columns = []string{"name", "model", "molar_mass", "ions", "r", "chi", "slope", "beta0", "beta1", "cphi", "max_molality",
	"saturation", "sat_slope", "down", "up", "fit_low", "grow", "t_low", "t_high", "basis", "grade", "sources",
	"n", "rmse", "max", "held_n", "held_rmse", "held_max", "note"}

// card is the head of a table, the lines that start with #, which a new fit
// leaves as they are.
func card(table string) string {
	var b strings.Builder
	for line := range strings.Lines(table) {
		if !strings.HasPrefix(line, "#") {
			break
		}
		b.WriteString(line)
	}
	return b.String()
}

// table writes the rows of refdata/isotherms/solutes.tsv.
func table(results []result) string {
	var b strings.Builder
	b.WriteString(strings.Join(columns, "\t") + "\n")
	for _, r := range results {
		b.WriteString(strings.Join(r.cells(), "\t") + "\n")
	}
	return b.String()
}

func (r result) cells() []string {
	p, fit, held := r.params, over(r.fitted), over(r.held)
	c := map[string]string{
		"name": r.name, "model": "flory-huggins", "molar_mass": fixed(p.MolarMass, 3), "ions": short(p.Ions),
		"saturation": short(p.Saturation), "sat_slope": short(p.SatSlope),
		"down": fixed(p.Down, 3), "up": fixed(p.Up, 3), "fit_low": fixed(p.FitLow, 3), "grow": fixed(p.Grow, 3),
		"t_low": fixed(r.worked.tLow, 0), "t_high": fixed(r.worked.tHigh, 0),
		"basis": r.basis, "grade": r.grade, "sources": strings.Join(r.worked.sources, " "), "note": r.note,
	}
	if p.Kind == water.KindPitzer {
		c["model"] = "pitzer"
		c["beta0"], c["beta1"], c["cphi"], c["max_molality"] = short(p.Beta0), short(p.Beta1), short(p.CPhi), short(p.MaxMolality)
		c["slope"] = short(p.Slope)
	} else {
		c["r"], c["chi"], c["slope"] = fixed(p.R, 4), fixed(p.Chi, 4), fixed(p.Slope, 1)
	}
	for prefix, s := range map[string]spread{"": fit, "held_": held} {
		if s.n > 0 {
			c[prefix+"n"], c[prefix+"rmse"], c[prefix+"max"] = strconv.Itoa(s.n), fixed(s.rms, 5), fixed(s.max, 5)
		}
	}
	out := make([]string, len(columns))
	for i, name := range columns {
		out[i] = c[name]
	}
	return out
}

// fixed has a number of decimals and no negative zero.
func fixed(v float64, digits int) string { return quantity.Fixed(v, digits) }

// short is empty for 0: the column does not apply.
func short(v float64) string {
	if v == 0 {
		return ""
	}
	return strconv.FormatFloat(v, 'g', -1, 64)
}

// report is the table of errors a person reads.
func report(results []result) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%-20s %8s %8s %8s  %5s %8s %8s  %5s %8s %8s  %s\n", "solute", "R", "chi", "slope", "n", "rmse", "max", "held", "rmse", "max", "band down/up, from, basis")
	for _, r := range results {
		f, h := over(r.fitted), over(r.held)
		fmt.Fprintf(&b, "%-20s %8.4f %8.4f %8.1f  %5d %8.5f %+8.5f  %5d %8.5f %+8.5f  %.3f/%.3f %.3f %s\n",
			r.name, r.params.R, r.params.Chi, r.params.Slope, f.n, f.rms, f.max, h.n, h.rms, h.max, r.params.Down, r.params.Up, r.params.FitLow, r.basis)
		for _, line := range byTable(r) {
			b.WriteString("    " + line + "\n")
		}
	}
	return b.String()
}

// byTable sums up a solute's misses table by table, those outside the stated
// temperatures apart.
func byTable(r result) []string {
	var keys []string
	groups := map[string][]miss{}
	add := func(list []miss, kept string) {
		for _, m := range list {
			k := kept + " " + m.Table
			if len(m.Parts) > 1 {
				k += " with " + m.Parts[1].Substance
				if m.Parts[1].Substance == r.name {
					k = kept + " " + m.Table + " with " + m.Parts[0].Substance
				}
			}
			if !stated(m.Point) {
				k += ", outside −15 to 60 °C"
				m.Celsius = 25 // so that over counts it
			}
			if groups[k] == nil {
				keys = append(keys, k)
			}
			groups[k] = append(groups[k], m)
		}
	}
	add(r.fitted, "fitted")
	add(r.held, "aside ")
	var out []string
	for _, k := range keys {
		s := over(groups[k])
		out = append(out, fmt.Sprintf("%-52s n %3d  rmse %.5f  bias %+.5f  max %+.5f", k, s.n, s.rms, s.bias, s.max))
	}
	return out
}
