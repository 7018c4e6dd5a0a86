package water

import "math"

const (
	// MolarMassWater is the molar mass of water, g/mol (IUPAC 2021, abridged).
	MolarMassWater = 18.0153
	// molesPerKilo is moles of water in a kilogram.
	molesPerKilo = 1000 / MolarMassWater
	gasConstant  = 8.314462618 // J/(mol K), exact since the SI of 2019, rounded
	zeroCelsius  = 273.15      // K
	roomKelvin   = 298.15      // 25 °C, where every parameter is given
)

// The activities a curve is evaluated between. An isotherm of something that
// dissolves has no end at 1, so the last part in 1e12 stands for it.
const (
	lowestActivity  = 1e-9
	highestActivity = 1 - 1e-12
)

// colder is 1/T − 1/298.15 K: positive below 25 °C.
func colder(celsius float64) float64 { return 1/(celsius+zeroCelsius) - 1/roomKelvin }

func clampActivity(a float64) float64 {
	// Written so that NaN, too, ends inside.
	if !(a > lowestActivity) {
		return lowestActivity
	}
	return math.Min(a, highestActivity)
}
