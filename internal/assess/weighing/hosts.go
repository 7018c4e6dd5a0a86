package weighing

import (
	"cmp"
	"slices"

	"levigate"
	"levigate/internal/assess/part"
)

// hosts lists the lines a small one may be pre-mixed in, best first: of its own
// phase, then the q.s. line, then the largest. Like goes into like: what is oil
// into a liquid oil, what is polar into a polar liquid, fine powder among fine
// powder of its own phase. What is neither (surfactants, gums, blends) goes only
// as a liquid into a liquid of its own phase.
func hosts(f *levigate.Formula, rows []*row, small *row) []*row {
	line := &f.Lines[small.line]
	if line.Match.Material == nil {
		return nil
	}
	var out []*row
	for _, r := range rows {
		if l := &f.Lines[r.line]; r != small && l.Match.Material != nil && r.how.can != levigate.TooLittle && takesUp(l, line) {
			out = append(out, r)
		}
	}
	rank := func(r *row) int {
		switch l := &f.Lines[r.line]; {
		case l.Phase == line.Phase:
			return 0
		case l.QS:
			return 1
		}
		return 2
	}
	slices.SortStableFunc(out, func(a, b *row) int {
		return cmp.Or(cmp.Compare(rank(a), rank(b)), b.mass.Cmp(a.mass))
	})
	return out
}

// takesUp reports whether a small line can be spread evenly in another, as far
// as their kinds tell; whether it dissolves is for the maker to see.
func takesUp(host, small *levigate.Line) bool {
	h, s := host.Match.Material, small.Match.Material
	into, kind := part.Open(h).Kind, part.Open(s).Kind
	switch kind {
	case levigate.Oil, levigate.Solute:
		return h.Form == levigate.Liquid && into == kind
	case levigate.Powder:
		// In a liquid it would settle, and a suspension does not divide evenly.
		return s.Form == levigate.FinePow && h.Form == levigate.FinePow && into == kind && host.Phase == small.Phase
	}
	return s.Form == levigate.Liquid && h.Form == levigate.Liquid && (into == levigate.Oil || into == levigate.Solute) && host.Phase == small.Phase
}
