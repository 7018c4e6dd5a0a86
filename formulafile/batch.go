package formulafile

import (
	"strings"

	"levigate/quantity"
)

// batch reads a mass and gives it in grams, exactly: the point is moved in the
// text, never in a floating number.
func (r *reader) batch(v value) quantity.Decimal {
	const help = "write grams or kilograms with the unit, like 500 g or 5 kg"
	s, ok := r.digits(v, help)
	if !ok {
		return quantity.Decimal{}
	}
	number, unit := leading(s)
	fault := ""
	switch {
	case number == "" && strings.Contains(s, ","):
		fault = "has a comma, not a point"
	case number == "":
		fault = "is not a number with a unit"
	case unit == "":
		fault = "has no unit"
	case unit == "kg":
		number = times1000(number)
	case unit != "g":
		fault = "is not in grams or kilograms"
	}
	if fault != "" {
		r.report(v.at, help, "batch %s %s", quote(s), fault)
		return quantity.Decimal{}
	}
	grams, fault, advice := exact(number)
	switch {
	case fault != "":
		r.report(v.at, advice, "batch %s %s", quote(s), fault)
	case grams.IsZero():
		r.report(v.at, "write a size above zero, or leave batch out", "batch is %s", quote(s))
	}
	return grams
}

// times1000 moves the point of a decimal number three places.
func times1000(s string) string {
	whole, frac, _ := strings.Cut(s, ".")
	frac += strings.Repeat("0", max(0, 3-len(frac)))
	whole, frac = whole+frac[:3], frac[3:]
	if trimmed := strings.TrimLeft(whole, "0"); trimmed != "" {
		whole = trimmed
	} else {
		whole = "0"
	}
	if frac == "" {
		return whole
	}
	return whole + "." + frac
}
