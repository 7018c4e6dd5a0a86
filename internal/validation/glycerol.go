package validation

import (
	"fmt"
	"math"

	"levigate/calc/water"
	"levigate/cite"
	"levigate/refdata"
	"levigate/work"
)

var _ = work.Prove(water.MethodFloryHuggins, append(hygrostat(), byHand()...)...)

// hygrostatTolerance is a little over what half a per cent of glycerol makes in
// activity at 0.70; the table prints whole per cents.
const hygrostatTolerance = 0.006

func hygrostat() []work.Check {
	var out []work.Check
	for _, p := range points(func(p refdata.Point) bool { return p.Table == "miner1953-hygrostat" }) {
		out = append(out, work.Check{
			What: fmt.Sprintf("glycerol %g %% at 25 °C, hygrostat table", 100*p.Parts[0].Share),
			Got:  func() float64 { return summed(p) }, Want: p.Activity, Tol: hygrostatTolerance, By: work.FromMemory, From: p.From,
		})
	}
	return out
}

// byHand are the strengths a separate calculation found before this program
// was written.
func byHand() []work.Check {
	var out []work.Check
	for _, v := range []struct{ activity, percent float64 }{{0.60, 72.0}, {0.70, 63.4}, {0.75, 58.1}, {0.80, 51.7}, {0.85, 43.8}} {
		out = append(out, work.Check{
			What: fmt.Sprintf("per cent of glycerol at activity %g and 25 °C", v.activity),
			Got: func() float64 {
				w, _ := curve("glycerol", 25).Water(v.activity)
				return 100 / (1 + w)
			}, Want: v.percent, Tol: 0.5, By: work.Independent, From: cite.Ref{Key: "oddmarrow"},
		})
	}
	return out
}

// hygrostatEquation is the recalled form of ASTM D5032 at celsius for a
// refractive index: (RH + A)² = (100 + A)² + A² − (Ri + A)².
func hygrostatEquation(index, celsius float64) float64 {
	a := 25.60 - 0.1950*celsius + 0.0008*celsius*celsius
	ri := 715.3 * (index - 1.3333)
	return (math.Sqrt((100+a)*(100+a)+a*a-(ri+a)*(ri+a)) - a) / 100
}
