package label

import (
	"cmp"
	"math"
	"slices"

	"levigate"
	"levigate/refdata"
)

// grid is the least difference between two shares, in %: finer than any
// balance, coarser than what adding floating numbers leaves behind.
const grid = 1e-9

// onGrid is a share counted in steps of the grid, so that equal shares are
// equal however their sums came about.
func onGrid(percent float64) float64 { return math.Round(percent / grid) }

// list is one market's ingredient list: by falling share, then the free
// places, then the colourants. The free places and the colourants may stand in
// any order; they keep the falling one, and equal shares that of their names,
// so that a list never changes without its formula.
func list(contained []levigate.Contained, market string) levigate.Ingredients {
	out := named(contained, market)
	for i := range out {
		out[i].Below1 = belowOne(market, out[i].Percent.Typical)
	}
	slices.SortStableFunc(out, func(a, b levigate.Ingredient) int {
		return cmp.Or(
			cmp.Compare(group(&a), group(&b)),
			cmp.Compare(onGrid(b.Percent.Typical), onGrid(a.Percent.Typical)),
			cmp.Compare(a.Name, b.Name),
			cmp.Compare(a.INCI[0], b.INCI[0]),
		)
	})
	ties(out)
	doubts(out)
	return out
}

// named gives every declared substance its name in the market, and one place
// to those that share a name. Substances without a name on file keep apart.
func named(contained []levigate.Contained, market string) levigate.Ingredients {
	out := make(levigate.Ingredients, 0, len(contained))
	for i := range contained {
		c := &contained[i]
		if c.Percent.High <= 0 {
			continue // a line still at 0 %
		}
		name, _ := refdata.LabelName(c.INCI, market)
		at := -1
		if name != "" {
			at = slices.IndexFunc(out, func(o levigate.Ingredient) bool { return o.Name == name })
		}
		if at < 0 {
			at = len(out)
			out = append(out, levigate.Ingredient{Market: market, Name: name, Colourant: true})
		}
		in := &out[at]
		in.INCI = append(in.INCI, c.INCI)
		in.Percent.Typical += c.Percent.Typical
		in.Percent.Low += c.Percent.Low
		in.Percent.High += c.Percent.High
		// Behind everything else only where it is a colour and nothing else.
		in.Colourant = in.Colourant && colours(c)
		for _, line := range c.From {
			if !slices.Contains(in.From, line) {
				in.From = append(in.From, line)
			}
		}
		slices.Sort(in.From)
	}
	return out
}

// group is where a place stands as a whole: ordered, free, colourants.
func group(i *levigate.Ingredient) int {
	switch {
	case i.Colourant:
		return 2
	case i.Below1:
		return 1
	}
	return 0
}

// belowOne reports whether a share leaves the order open: below 1 % in the EU
// and Great Britain, not more than 1 % in the US. Recalled, not re-read.
func belowOne(market string, percent float64) bool {
	if market == "us" {
		return onGrid(percent) <= onGrid(1)
	}
	return onGrid(percent) < onGrid(1)
}

// colours reports whether a substance is a colourant: by its class, or by a
// name that is a colour index number.
func colours(c *levigate.Contained) bool {
	return c.Substance.Is("colourant") || indexed.MatchString(c.INCI)
}
