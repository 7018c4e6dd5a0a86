package chart

import (
	"math"

	"levigate/quantity"
)

// Round gives an axis from min to at least max with four to six round ticks.
func Round(title string, min, max float64) Axis {
	step := roundStep((max - min) / 5)
	a := Axis{Title: title, Min: min, Max: min + step*math.Ceil((max-min)/step-1e-9)}
	n := int(math.Max(0, -math.Floor(math.Log10(step)+1e-9)))
	for i := 0; ; i++ {
		v := min + float64(i)*step
		if v > a.Max+step/2 {
			return a
		}
		a.Ticks = append(a.Ticks, Tick{v, quantity.Fixed(v, n)})
	}
}

// roundStep is the nearest of 1, 2, 5 and their tens at or above a step.
func roundStep(step float64) float64 {
	if step <= 0 {
		return 1
	}
	ten := math.Pow(10, math.Floor(math.Log10(step)))
	for _, m := range []float64{1, 2, 5} {
		if step <= m*ten*(1+1e-9) {
			return m * ten
		}
	}
	return 10 * ten
}
