package levigate

import (
	"errors"
	"fmt"
	"strings"

	"levigate/quantity"
)

// gramsPoint says how many places each unit of mass moves the point to the
// right to become grams.
var gramsPoint = map[string]int{"kg": 3, "g": 0, "mg": -3}

// ParseGrams reads a mass with its unit and gives grams, exactly: the point is
// moved in the text, never in a floating number. A bare number is refused; a
// batch of "5" has been both.
func ParseGrams(text string) (quantity.Decimal, error) {
	text = strings.TrimSpace(text)
	cut := strings.LastIndexFunc(text, func(r rune) bool { return r >= '0' && r <= '9' || r == '.' }) + 1
	number, unit := text[:cut], strings.TrimSpace(text[cut:])
	places, known := gramsPoint[unit]
	switch {
	case text == "":
		return quantity.Decimal{}, errors.New("a mass is missing")
	case unit == "":
		return quantity.Decimal{}, fmt.Errorf("%q has no unit; write g, kg or mg behind it", text)
	case !known:
		return quantity.Decimal{}, fmt.Errorf("%q is not a mass in g, kg or mg", text)
	}
	if _, err := quantity.ParseDecimal(number); err != nil {
		return quantity.Decimal{}, err
	}
	return quantity.ParseDecimal(movePoint(number, places))
}

// movePoint moves the point of digits[.digits] to the right, or to the left for
// places below zero.
func movePoint(number string, places int) string {
	whole, frac, _ := strings.Cut(number, ".")
	if places < 0 {
		whole = strings.Repeat("0", -places+1) + whole
		at := len(whole) + places
		whole, frac = whole[:at], whole[at:]+frac
	} else {
		frac += strings.Repeat("0", max(0, places-len(frac)))
		whole, frac = whole+frac[:places], frac[places:]
	}
	whole = strings.TrimLeft(whole, "0")
	frac = strings.TrimRight(frac, "0")
	if whole == "" {
		whole = "0"
	}
	if frac == "" {
		return whole
	}
	return whole + "." + frac
}
