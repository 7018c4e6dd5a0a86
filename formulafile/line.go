package formulafile

import (
	"slices"
	"strings"

	"levigate"
)

const lineLike = "{phase: A, material: Glycerin, percent: 26}"

// places lists the words for where a powder may sit.
var places = []string{string(levigate.InOil), string(levigate.InPolyol), string(levigate.Grain)}

// lines reads the formula table. At most one line fills up to 100.
func (r *reader) lines(v value) []levigate.Line {
	var out []levigate.Line
	var first levigate.Place // of the line that fills up
	ok := r.rows(v, MaxLines, "a line", func(item value) {
		item.like = lineLike
		line, qs := r.line(item)
		out = append(out, line)
		switch {
		case !line.QS:
		case first.Line == 0:
			first = qs
		default:
			r.report(qs, "keep one and give the other a percent", "a second line fills up to 100; the first is in line %d, column %d", first.Line, first.Column)
		}
	})
	if ok && len(out) == 0 {
		r.report(v.at, "add a line, like - "+lineLike, "lines is empty")
	}
	return out
}

// line reads one line and where its qs stands.
func (r *reader) line(v value) (levigate.Line, levigate.Place) {
	l := levigate.Line{Place: v.at}
	var percent, qs *levigate.Place
	meant, ok := r.group(v, "a line", []field{
		{name: "phase", like: "A", read: func(v value) { l.Phase = r.text(v, MaxCode) }},
		{name: "material", like: "Glycerin", needs: true, read: func(v value) { l.Name = r.text(v, MaxName) }},
		{name: "percent", like: "12.5", read: func(v value) {
			percent, v.needs = &v.at, true
			if s := strings.ToLower(v.raw()); s == "qs" || s == "q.s." {
				r.report(v.at, "write qs: true instead of percent", "percent is %s", quote(s))
				return
			}
			l.Percent, _ = r.decimal(v)
		}},
		{name: "qs", like: "true", read: func(v value) {
			qs = &v.at
			l.QS = r.qs(v)
		}},
		{name: "sits", like: "oil", read: func(v value) { l.Sits = levigate.Sits(r.choice(v, places)) }},
	})
	switch {
	case ok && percent != nil && qs != nil:
		r.report(*qs, "keep percent, or keep qs: true to fill up to 100", "a line has both percent and qs")
		l.QS = false // the one fault is told; do not count it as a second
	case ok && percent == nil && qs == nil && !slices.Contains(meant, "percent") && !slices.Contains(meant, "qs"):
		r.report(v.at, "add percent: 12.5, or qs: true on the one line that fills up to 100", "a line has no percent")
	}
	if qs == nil {
		qs = &v.at
	}
	return l, *qs
}

// qs reads the mark of the line that fills up; it is there or it is not.
func (r *reader) qs(v value) bool {
	if v.kind() != isTruth {
		r.wrong(v, "write qs: true, without quotes")
		return false
	}
	if yes, _ := r.truth(v); !yes {
		r.report(v.at, "leave qs out and write percent", "qs is false")
		return false
	}
	return true
}
