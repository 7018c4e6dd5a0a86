package validation

import (
	"fmt"
	"math"

	"levigate/cite"
	"levigate/refdata"
	"levigate/work"
)

// points lists the measured points that keep says yes to, at the temperatures
// isotherms are held against data at.
func points(keep func(refdata.Point) bool) []refdata.Point {
	var out []refdata.Point
	for _, p := range refdata.Measured() {
		if p.Celsius >= coldest && p.Celsius <= hottest && known(p) && keep(p) {
			out = append(out, p)
		}
	}
	return out
}

// rms is the root mean square of the curve less the point.
func rms(list []refdata.Point) float64 {
	sum := 0.0
	for _, p := range list {
		d := summed(p) - p.Activity
		sum += d * d
	}
	return math.Sqrt(sum / float64(len(list)))
}

// bias is the mean of the curve less the point.
func bias(list []refdata.Point) float64 {
	sum := 0.0
	for _, p := range list {
		sum += summed(p) - p.Activity
	}
	return sum / float64(len(list))
}

// vouch says who stands behind a table's rows.
func vouch(m cite.Mark) work.Vouch {
	if m == cite.Read {
		return work.Published
	}
	return work.FromMemory
}

// rmsCheck asks that the points of one table that keep says yes to be met
// within tol.
func rmsCheck(what, table string, tol float64, keep func(refdata.Point) bool) work.Check {
	list := points(func(p refdata.Point) bool { return p.Table == table && keep(p) })
	if len(list) == 0 {
		panic("validation: " + what + ": no points in " + table)
	}
	p := list[0]
	return work.Check{
		What: fmt.Sprintf("%s, %s, root mean square miss in activity, points: %d", what, p.Method, len(list)),
		Got:  func() float64 { return rms(list) }, Want: 0, Tol: tol, By: vouch(p.Mark), From: p.From,
	}
}
