package quantity

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Unit is the text a figure carries behind its value.
type Unit string

// The units figures and methods use.
const (
	One         Unit = "1"
	Percent     Unit = "%"
	GramPer100g Unit = "g/100 g"
	GramPerGram Unit = "g/g"
	GramPerML   Unit = "g/mL"
	MLPer100g   Unit = "mL/100 g"
	Gram        Unit = "g"
	ML          Unit = "mL"
	Celsius     Unit = "°C"
	Kelvin      Unit = "K"
	PerKelvin   Unit = "1/K"
	GramPerMole Unit = "g/mol"
	Mole        Unit = "mol"
	MolePerKilo Unit = "mol/kg"
	Minute      Unit = "min"
	Joule       Unit = "J/mol"

	// Money is an amount in whatever one currency all amounts of a calculation
	// are in. It converts into nothing: no exchange rate is kept.
	Money        Unit = "money"
	MoneyPerKilo Unit = "money/kg"
)

// scale is what one of a written unit is in its dimension's first unit.
type scale struct {
	base   Unit
	factor float64
}

// written lists the units a person may write. Sizes are exact by definition
// (BIPM SI Brochure 9th ed.; NIST Handbook 44 app. C for lb and oz).
var written = map[string]scale{
	"g": {Gram, 1}, "kg": {Gram, 1000}, "mg": {Gram, 0.001}, "oz": {Gram, 28.349523125}, "lb": {Gram, 453.59237},
	"mL": {ML, 1}, "ml": {ML, 1}, "L": {ML, 1000}, "l": {ML, 1000},
	"g/mL": {GramPerML, 1}, "g/ml": {GramPerML, 1}, "g/cm3": {GramPerML, 1}, "g/cm³": {GramPerML, 1}, "kg/m3": {GramPerML, 0.001}, "kg/m³": {GramPerML, 0.001}, "kg/L": {GramPerML, 1},
	"%": {One, 0.01}, "1": {One, 1}, "": {One, 1},
	"g/g": {GramPerGram, 1},
	"min": {Minute, 1}, "h": {Minute, 60}, "s": {Minute, 1.0 / 60},
	"g/mol": {GramPerMole, 1}, "mol/kg": {MolePerKilo, 1},
}

// ParseIn reads a number with or without a unit and gives it in unit want.
// Without a unit the number is taken to be in want already. Temperatures may
// be written in °C, C, °F, F or K.
func ParseIn(text string, want Unit) (float64, error) {
	text = strings.TrimSpace(text)
	// A unit may end in a digit (g/cm3): take the longest leading number instead.
	if v, err := strconv.ParseFloat(text, 64); err == nil {
		return finite(v, text)
	}
	cut := len(text)
	for ; cut > 0; cut-- {
		if _, err := strconv.ParseFloat(strings.TrimSpace(text[:cut]), 64); err == nil {
			break
		}
	}
	if cut == 0 {
		return 0, fmt.Errorf("%q is not a number", text)
	}
	v, _ := strconv.ParseFloat(strings.TrimSpace(text[:cut]), 64)
	if _, err := finite(v, text); err != nil {
		return 0, err
	}
	unit := strings.TrimSpace(text[cut:])
	if want == Celsius || want == Kelvin {
		return temperature(v, unit, want)
	}
	w, ok := written[string(want)]
	if !ok {
		w = scale{want, 1}
	}
	s, ok := written[unit]
	if !ok && unit == string(want) {
		s, ok = w, true
	}
	if !ok && strings.HasPrefix(unit, ",") {
		return 0, fmt.Errorf("%s has a comma; write a point before the decimals and no mark between thousands", text)
	}
	if !ok {
		return 0, fmt.Errorf("unit %q is not known; write it in %s", unit, want)
	}
	if s.base != w.base {
		return 0, fmt.Errorf("%s does not convert to %s", unit, want)
	}
	return v * s.factor / w.factor, nil
}

func finite(v float64, text string) (float64, error) {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, fmt.Errorf("%q is not a finite number", text)
	}
	return v, nil
}

// temperature converts v in the written unit to want.
func temperature(v float64, unit string, want Unit) (float64, error) {
	c := v
	switch unit {
	case "", "°C", "C":
	case "°F", "F":
		c = (v - 32) / 1.8
	case "K":
		c = v - 273.15
	default:
		return 0, fmt.Errorf("unit %q is not a temperature; write °C, °F or K", unit)
	}
	if c < -273.15 {
		return 0, fmt.Errorf("%g %s lies below absolute zero", v, unit)
	}
	if want == Kelvin {
		return c + 273.15, nil
	}
	return c, nil
}
