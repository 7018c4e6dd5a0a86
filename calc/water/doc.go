// Package water holds the water isotherms of single substances: how many grams
// of water one gram of a dry substance holds at a water activity.
//
// Each file declares one equation as a plain function and as a work.Method.
// Curve puts one of them behind a single type, at one temperature, with its
// slope, its inverse, its saturation and its band.
//
// Glossary: activity is water activity, the partial pressure of water over
// that of pure water at the same temperature. φw is the share of water in the
// volume of a solution, counted in segments of the size of a water molecule; R
// is how many such segments a particle of solute has. Saturation is the
// activity over the saturated solution, where a dry crystal starts to dissolve
// in the moisture of the air. The solute's excess is the logarithm of its own
// activity over that at saturation: below 0 the solution can dissolve more.
// The continuation is the rule that carries a salt's isotherm beyond the
// strongest solution its equation is stated for.
package water
