package formulafile

import (
	"levigate"
	"levigate/quantity"
)

const shareLike = "{inci: Kaolin, percent: 100}"

// composition reads what a raw material is declared to be made of. Its typical
// shares come to exactly 100.
func (r *reader) composition(v value) []levigate.Share {
	var out []levigate.Share
	var total quantity.Decimal
	before := len(r.problems) // a share that could not be read spoils the total
	ok := r.rows(v, MaxShares, "a share", func(item value) {
		item.like = shareLike
		var s levigate.Share
		var percent quantity.Decimal
		s.Percent, percent = r.ranged(item, "a share", field{name: "inci", like: "Kaolin", needs: true, read: func(v value) { s.INCI = r.text(v, MaxName) }})
		total = total.Add(percent)
		out = append(out, s)
	})
	sound := len(r.problems) == before
	switch {
	case ok && len(out) == 0:
		r.report(v.at, "add a share, like "+shareLike, "composition is empty")
	case ok && sound && total.Cmp(quantity.Hundred) != 0:
		r.report(v.at, "change the shares so that their percentages come to 100", "the composition comes to %s, not 100", total)
	}
	return out
}

// water reads the water a raw material holds as it is delivered.
func (r *reader) water(v value) levigate.Range {
	w, _ := r.ranged(v, "water")
	return w
}

// ranged reads a group with percent, low and high, and other fields beside
// them. Without low and high the value has no width.
func (r *reader) ranged(v value, what string, others ...field) (levigate.Range, quantity.Decimal) {
	var percent quantity.Decimal
	var low, high *quantity.Decimal
	sound := false
	before := len(r.problems)
	end := func(to **quantity.Decimal) func(value) {
		return func(v value) {
			d, _ := r.share(v)
			*to = &d
		}
	}
	r.group(v, what, append(others,
		field{name: "percent", like: "12.5", needs: true, read: func(v value) { percent, sound = r.share(v) }},
		field{name: "low", like: "10", read: end(&low)},
		field{name: "high", like: "14", read: end(&high)},
	))
	if !sound || len(r.problems) != before {
		return levigate.Range{}, percent
	}
	return r.around(v.at, percent, low, high), percent
}

// around reads low and high beside a typical value; without them the value has
// no width.
func (r *reader) around(at levigate.Place, typical quantity.Decimal, low, high *quantity.Decimal) levigate.Range {
	if low == nil && high == nil {
		return levigate.Exactly(typical.Float())
	}
	if low == nil || high == nil {
		r.report(at, "write both, or neither", "only one of low and high is given")
		return levigate.Range{}
	}
	if low.Cmp(typical) > 0 || typical.Cmp(*high) > 0 {
		r.report(at, "write them so that low is at most percent and percent at most high", "low %s, percent %s and high %s are out of order", low, typical, high)
	}
	return levigate.Range{Typical: typical.Float(), Low: low.Float(), High: high.Float()}
}
