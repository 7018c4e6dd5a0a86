package formulafile

import (
	"strconv"
	"strings"

	"levigate/quantity"
)

// decimal reads an exact number of zero or more: digits, a point, digits.
func (r *reader) decimal(v value) (quantity.Decimal, bool) {
	s, ok := r.digits(v, "write a number like "+v.like)
	if !ok {
		return quantity.Decimal{}, false
	}
	d, fault, help := exact(s)
	if fault != "" {
		r.report(v.at, help, "%s %s %s", v.name, quote(s), fault)
	}
	return d, fault == ""
}

// exact parses an exact number, or says what is wrong with it and what to write
// instead. Zeros at the end go, so that equal numbers are the same value.
func exact(s string) (d quantity.Decimal, fault, help string) {
	whole, frac, dotted := strings.Cut(s, ".")
	switch {
	case len(s) > MaxCode:
		return d, "is too long", "write a number like 12.5"
	case strings.HasSuffix(s, "%"):
		return d, "has a % sign", "leave the % sign out"
	case strings.Contains(s, ",") && (dotted || strings.Count(s, ",") > 1):
		return d, "has more than one mark between its digits", "write one point before the decimals and no other mark"
	case len(whole) > 1 && whole[0] == '0' && digitsOnly(whole):
		return d, "begins with a zero", "write it without the zeros in front"
	}
	if dotted && digitsOnly(frac) && len(frac) <= quantity.MaxDecimals {
		s = strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
	}
	d, err := quantity.ParseDecimal(s)
	if err == nil {
		return d, "", ""
	}
	fault, help, _ = strings.Cut(err.Error(), "; ")
	fault = strings.TrimPrefix(strings.TrimPrefix(fault, strconv.Quote(s)), s)
	if !strings.HasPrefix(help, "write") {
		help = strings.TrimSuffix("write fewer digits: "+help, ": ")
	}
	return d, strings.TrimSpace(fault), help
}

// digits gives the raw text of a number, quoted or not.
func (r *reader) digits(v value, help string) (string, bool) {
	s := v.raw()
	if k := v.kind(); k != isNumber && k != isText && k != isOdd || s == "" || strings.Contains(s, "\n") {
		r.wrong(v, help)
		return "", false
	}
	return s, true
}

// share is decimal for a part of 100.
func (r *reader) share(v value) (quantity.Decimal, bool) {
	d, ok := r.decimal(v)
	if ok && d.Cmp(quantity.Hundred) > 0 {
		r.report(v.at, "write a percentage of 100 or less", "%s is %s", v.name, d)
		return d, false
	}
	return d, ok
}

// measure reads a number, with its unit or without, that must lie in a span.
func (r *reader) measure(v value, in span) (float64, bool) {
	help := "write a number like " + v.like
	s, ok := r.digits(v, help)
	if !ok {
		return 0, false
	}
	switch number, _ := leading(s); {
	case number == "" && strings.Contains(s, ","):
		r.report(v.at, "write a point where the comma is, like "+v.like, "%s %s has a comma", v.name, quote(s))
		return 0, false
	case number == "" || len(number) > MaxCode:
		r.report(v.at, help, "%s %s is not a number", v.name, quote(s))
		return 0, false
	}
	f, err := quantity.ParseIn(s, in.unit)
	if err != nil {
		why, advice, _ := strings.Cut(err.Error(), "; ")
		if advice != "" {
			help = advice + ", like " + v.like
		}
		r.report(v.at, help, "%s is %s: %s", v.name, quote(s), why)
		return 0, false
	}
	if !in.contains(f) {
		r.report(v.at, "see whether the number and its unit are right", "%s is %s, which is not %s", v.name, quote(s), in)
		return 0, false
	}
	// A converted number would show the last digits of a binary fraction.
	f, _ = strconv.ParseFloat(strconv.FormatFloat(f, 'g', 12, 64), 64)
	return f + 0, true // + 0: no negative zero
}

// leading cuts a text after the number it begins with: [-]digits[.digits]. It
// is empty when another number form stands there: 1e2, 0x10, 1_000, 1,5.
func leading(s string) (number, unit string) {
	i := len(s) - len(strings.TrimLeft(strings.TrimPrefix(s, "-"), "0123456789."))
	whole, frac, dotted := strings.Cut(strings.TrimPrefix(s[:i], "-"), ".")
	if !digitsOnly(whole) || dotted && !digitsOnly(frac) {
		return "", ""
	}
	unit = strings.TrimLeft(s[i:], " ")
	if unit == s[i:] && unit != "" && strings.ContainsAny(unit[:1], "eExXpP_,") {
		return "", ""
	}
	return s[:i], unit
}

func digitsOnly(s string) bool {
	return s != "" && strings.Trim(s, "0123456789") == ""
}
