package api

import (
	"strconv"

	"levigate"
	"levigate/quantity"
	"levigate/work/render"
)

// severity is how grave a finding is: a word, and a mark that tells it without
// colour.
type severity struct {
	Word, Class string
}

func severityOf(f *levigate.Finding) severity {
	switch {
	case f.Verdict == levigate.CannotTell:
		return severity{"Cannot tell", "cant"}
	case f.Severity == levigate.Stop:
		return severity{"Stop", "stop"}
	case f.Severity == levigate.Warn:
		return severity{"Answer", "warn"}
	}
	return severity{"Advice", "adv"}
}

// count writes small numbers as words, as prose does.
func count(n int) string {
	words := [...]string{"none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"}
	if n < len(words) {
		return words[n]
	}
	return strconv.Itoa(n)
}

// degrees writes a temperature.
func degrees(c float64) string { return render.Plain(c) + " °C" }

// ranged writes a range of grams or percent with the digits its band allows:
// "0.36 (0.30–0.42)".
func ranged(r levigate.Range, u quantity.Unit) (value, band string) {
	v, _, _ := quantity.Shown(r.Typical, r.Low, r.High, u)
	if r.Low == r.High {
		return v, ""
	}
	return v, render.IntervalOf(r.Typical, r.Low, r.High, u)
}
