package render

import (
	"strconv"
	"strings"

	"levigate/quantity"
	"levigate/work"
)

// None stands where a figure has no value.
const None = "–"

// Value is a figure's value without its unit.
func Value(f *work.Figure) string {
	if f.State == work.Missing {
		return None
	}
	v, _, _ := quantity.Shown(f.Value, f.Low, f.High, f.Unit)
	return Minus(v)
}

// Band is a figure's value and interval: "0.30 (0.28–0.34)".
func Band(f *work.Figure) string {
	if f.State == work.Missing {
		return None
	}
	return Value(f) + " (" + Interval(f) + ")"
}

// Interval is the ends of a figure's band: "0.28–0.34". A figure whose spread
// nobody stated says so: no width is not the same as no doubt.
func Interval(f *work.Figure) string {
	switch {
	case f.State == work.Missing:
		return ""
	case f.Low == f.High && unstated(f):
		return "spread not stated"
	case f.Low == f.High:
		return "exact"
	}
	_, low, high := quantity.Shown(f.Value, f.Low, f.High, f.Unit)
	return ends(low, high)
}

// IntervalOf is Interval for a range that is no figure.
func IntervalOf(v, low, high float64, u quantity.Unit) string {
	_, lo, hi := quantity.Shown(v, low, high, u)
	return ends(lo, hi)
}

// ends joins two numbers. An en dash beside a minus reads badly, so negative
// ends are joined by a word.
func ends(low, high string) string {
	if strings.HasPrefix(low, "-") || strings.HasPrefix(high, "-") {
		return Minus(low) + " to " + Minus(high)
	}
	return low + "–" + high
}

// Sentence says the band in words, once: "between 0.28 and 0.34, nine times in
// ten".
func Sentence(f *work.Figure) string {
	switch {
	case f.State == work.Missing:
		return strings.Join(f.Notes, "; ")
	case f.Low == f.High && unstated(f):
		return "how far it may be off was not stated"
	case f.Low == f.High:
		return "exact"
	}
	_, low, high := quantity.Shown(f.Value, f.Low, f.High, f.Unit)
	return "between " + Minus(low) + " and " + Minus(high) + Suffix(f.Unit) + ", nine times in ten"
}

// Evidence is the weakest evidence behind a figure, as a word.
func Evidence(f *work.Figure) string {
	switch f.State {
	case work.Missing:
		return ""
	case work.OutOfRange:
		return f.Grade.String() + ", outside the range it was proved for"
	}
	return f.Grade.String()
}

// Suffix is a unit as it stands behind a number: nothing for a plain number.
func Suffix(u quantity.Unit) string {
	if u == quantity.One || u == "" {
		return ""
	}
	return " " + string(u)
}

// Plain writes a number a person set (a temperature) as she would: without
// zeros it does not need.
func Plain(v float64) string { return Minus(strconv.FormatFloat(v, 'g', 6, 64)) }

// Minus puts the sign a printer uses in place of the typewriter's.
func Minus(number string) string { return strings.Replace(number, "-", "−", 1) }

func unstated(f *work.Figure) bool {
	for i := range f.Moves {
		if f.Moves[i].Cause.NotStated {
			return true
		}
	}
	return false
}
