package view

import (
	"strings"

	"levigate"
	"levigate/quantity"
	"levigate/work/render"
)

// Severity is how grave a finding is: a word, and a class that a mark is made
// from, so that colour is never the only cue.
type Severity struct {
	Word, Class string
}

// SeverityOf is a finding's severity. One that cannot tell is no stop.
func SeverityOf(f *levigate.Finding) Severity {
	switch {
	case f.Verdict == levigate.CannotTell:
		return Severity{"Cannot tell", "cant"}
	case f.Severity == levigate.Stop:
		return Severity{"Stop", "stop"}
	case f.Severity == levigate.Warn:
		return Severity{"Answer", "warn"}
	}
	return Severity{"Advice", "adv"}
}

// Degrees writes a temperature.
func Degrees(c float64) string { return render.Plain(c) + " °C" }

// Ranged writes a range of grams or percent with the digits its band allows:
// "0.36 (0.30–0.42)".
func Ranged(r levigate.Range, u quantity.Unit) (value, band string) {
	v, _, _ := quantity.Shown(r.Typical, r.Low, r.High, u)
	if r.Low == r.High {
		return v, ""
	}
	return v, render.IntervalOf(r.Typical, r.Low, r.High, u)
}

// Sentence makes a help text that starts small and ends open into one.
func Sentence(s string) string {
	if s == "" {
		return ""
	}
	return strings.ToUpper(s[:1]) + strings.TrimSuffix(s[1:], ".") + "."
}
