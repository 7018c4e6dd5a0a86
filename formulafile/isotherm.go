package formulafile

import "levigate"

const isothermLike = "{gab: [0.08, 18, 0.71]}"

// isotherm reads one of three forms. A borrowed one carries only the name of
// the material it is like; it is put in by whoever holds a library.
func (r *reader) isotherm(v value) *levigate.Isotherm {
	var out *levigate.Isotherm
	forms := 0
	form := func(read func(value) *levigate.Isotherm) func(value) {
		return func(v value) {
			forms++
			out = read(v)
		}
	}
	_, ok := r.group(v, "an isotherm", []field{
		{name: "gab", like: "[0.08, 18, 0.71]", read: form(r.gab)},
		{name: "linear", like: "0.0012", read: form(func(v value) *levigate.Isotherm {
			w, _ := r.measure(v, linearSpan)
			return &levigate.Isotherm{Model: levigate.Linear, AtOne: levigate.Exactly(w)}
		})},
		{name: "like", like: "Maize starch", read: form(func(v value) *levigate.Isotherm {
			return &levigate.Isotherm{Name: r.text(v, MaxName)}
		})},
	})
	switch {
	case ok && forms > 1:
		r.report(v.at, "keep one of gab, linear and like", "isotherm is given in %d forms", forms)
	case ok && forms == 0 && len(v.entries()) == 0:
		r.report(v.at, "write it like "+isothermLike+", or leave isotherm out", "isotherm is empty")
	}
	return out
}

// gab reads the three constants of the equation: monolayer in g/g, C and K.
func (r *reader) gab(v value) *levigate.Isotherm {
	i := &levigate.Isotherm{Model: levigate.GAB}
	const help = "write the monolayer in g/g, C and K, like [0.08, 18, 0.71]"
	if v.kind() != isList {
		r.wrong(v, help)
		return i
	}
	items := v.items()
	if len(items) != 3 {
		r.report(v.at, help, "gab has %d entries, not 3", len(items))
		return i
	}
	for n, c := range []struct {
		name, like string
		in         span
		to         *float64
	}{{"the monolayer", "0.08", monolayerSpan, &i.M0}, {"C", "18", energySpan, &i.C}, {"K", "0.71", stateSpan, &i.K}} {
		item := items[n]
		item.name, item.like = c.name, c.like
		*c.to, _ = r.measure(item, c.in)
	}
	return i
}
