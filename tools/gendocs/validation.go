package main

import (
	"math"

	"levigate/quantity"
	"levigate/work"
	"levigate/work/worktest"
)

// validationPage lists every check of every method: what, who vouches, source,
// expected, got, tolerance. Our own past output stands apart: it shows change,
// not truth.
func validationPage() string {
	s := newSheet("Validation")
	s.paragraph("What each method was checked against, and by whom. Got is rounded to a tenth of the tolerance. " +
		"Published is a value in a source that is named; independent is a second version or a closed form made another way; " +
		"law is a conservation, a limit or an inverse.")
	var all []work.Check
	for _, m := range work.Methods() {
		all = append(all, m.Checks...)
	}
	var counts [][]string
	for _, v := range vouches {
		n := 0
		for _, c := range all {
			if c.By == v {
				n++
			}
		}
		counts = append(counts, []string{v.String(), quantity.Fixed(float64(n), 0)})
	}
	s.table([]string{"Vouched for by", "Checks"}, counts)
	isPinned := func(c work.Check) bool { return c.By == work.Pinned }
	for _, t := range topics() {
		s.heading(2, "%s", t.name)
		for _, m := range t.methods {
			checks(s, m, func(c work.Check) bool { return !isPinned(c) })
		}
	}
	s.heading(2, "Pinned")
	s.paragraph("Our own past output. It vouches for nothing.")
	for _, m := range work.Methods() {
		checks(s, m, isPinned)
	}
	return s.String()
}

func checks(s *sheet, m *work.Method, wanted func(work.Check) bool) {
	var rows [][]string
	for _, c := range m.Checks {
		if !wanted(c) {
			continue
		}
		from := ""
		if c.From.Key != "" {
			from = c.From.String()
		}
		rows = append(rows, []string{c.What, c.By.String(), from, shown(c.Want, c.Tol), shown(worktest.Got(m, c), c.Tol), quantity.Significant(c.Tol, 2)})
	}
	if len(rows) > 0 {
		s.heading(3, "%s: %s", m.ID, m.Title)
		s.table([]string{"What", "Vouched for by", "Source", "Expected", "Got", "±"}, rows)
	}
}

// shown rounds to a tenth of the tolerance: what lies below it differs from
// machine to machine, and a page must not.
func shown(v, tolerance float64) string {
	if tolerance > 0 {
		step := math.Pow(10, math.Floor(math.Log10(tolerance))-1)
		v = math.Round(v/step) * step
	}
	if v == 0 {
		return "0"
	}
	text := quantity.Significant(v, 6)
	return trimmed(text)
}

// trimmed drops the zeros that stand for nothing behind the point.
func trimmed(text string) string {
	point, exponent := false, false
	for _, c := range text {
		point = point || c == '.'
		exponent = exponent || c == 'e'
	}
	if !point || exponent {
		return text
	}
	for text[len(text)-1] == '0' {
		text = text[:len(text)-1]
	}
	if text[len(text)-1] == '.' {
		text = text[:len(text)-1]
	}
	return text
}
