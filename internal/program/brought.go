package program

import (
	"cmp"
	"slices"

	"levigate"
)

// Brought is the water one line brings.
type Brought struct {
	Line     int // from 1
	Material string
	Grams    levigate.Range // per 100 g of the formula
}

// WaterByLine lists what each line brings of water, largest first: where the
// water is that nobody wrote.
func WaterByLine(a *levigate.Assessment) []Brought {
	var out []Brought
	for i := range a.Formula.Lines {
		l := &a.Formula.Lines[i]
		m := l.Match.Material
		if m == nil || m.Water.High == 0 {
			continue
		}
		share := l.Percent.Float() / 100
		out = append(out, Brought{i + 1, m.Name, levigate.Range{
			Typical: share * m.Water.Typical, Low: share * m.Water.Low, High: share * m.Water.High,
		}})
	}
	slices.SortStableFunc(out, func(x, y Brought) int { return -cmp.Compare(x.Grams.Typical, y.Grams.Typical) })
	return out
}
