package cost

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"levigate"
)

// offer is one raw material's prices on the list, the newest last.
type offer struct {
	material *levigate.Material
	prices   []*levigate.Price
}

// newest is the price that counts, and how many older ones there are.
func (o *offer) newest() (*levigate.Price, int) {
	return o.prices[len(o.prices)-1], len(o.prices) - 1
}

// shelf is the list sorted by what its names mean.
type shelf struct {
	offers  map[*levigate.Material]*offer
	order   []*offer
	unknown []string // as a note has them
	later   int      // prices of a later day than the one asked
}

// sortPrices looks every price's name up, as the formula's lines were looked up.
// Two prices of one raw material on one day are a problem: nothing says which
// counts.
func sortPrices(f *levigate.Formula, lib levigate.Library, prices []levigate.Price, day time.Time) (*shelf, []levigate.Problem) {
	s := &shelf{offers: map[*levigate.Material]*offer{}}
	for i := range prices {
		p := &prices[i]
		match := lib.Find(p.Material, f.Materials)
		switch m := match.Material; {
		case m == nil:
			s.unknown = append(s.unknown, stranger(p, match.Nearest))
		case p.Date.After(day):
			s.later++
		default:
			if s.offers[m] == nil {
				s.offers[m] = &offer{material: m}
				s.order = append(s.order, s.offers[m])
			}
			s.offers[m].prices = append(s.offers[m].prices, p)
		}
	}
	var problems []levigate.Problem
	for _, o := range s.order {
		slices.SortStableFunc(o.prices, func(a, b *levigate.Price) int {
			return cmp.Or(a.Date.Compare(b.Date), cmp.Compare(a.Place.Line, b.Place.Line))
		})
		for i, p := range o.prices[1:] {
			if first := o.prices[i]; first.Date.Equal(p.Date) {
				problems = append(problems, levigate.Problem{Place: p.Place,
					Text: fmt.Sprintf("line %d and line %d both price %s on %s", first.Place.Line, p.Place.Line, named(o.material), p.Date.Format(time.DateOnly)),
					Help: "keep one of them, or correct a date: the newest price counts"})
			}
		}
	}
	slices.SortStableFunc(problems, func(a, b levigate.Problem) int { return cmp.Compare(a.Line, b.Line) })
	return s, problems
}

// stranger is a price's name that means nothing to the library.
func stranger(p *levigate.Price, near []string) string {
	s := fmt.Sprintf("%q (line %d", p.Material, p.Place.Line)
	if len(near) > 0 {
		s += fmt.Sprintf("; did you mean %q?", near[0])
	}
	return s + ")"
}

func named(m *levigate.Material) string {
	if m.Name != "" {
		return m.Name
	}
	return m.Code
}

// of finds the prices for a line: those of its raw material; or, where that is
// one substance, those written under the substance's INCI name, which may be of
// another grade.
func (s *shelf) of(l *levigate.Line) (o *offer, byINCI bool) {
	m := l.Match.Material
	if m == nil {
		return nil, false
	}
	if o = s.offers[m]; o != nil || len(m.Declared) != 1 {
		return o, false
	}
	for _, o := range s.order {
		if pure := o.material; pure.Origin == levigate.Pure && len(pure.Declared) == 1 && pure.Declared[0].INCI == m.Declared[0].INCI {
			return o, true
		}
	}
	return nil, false
}

// delivered finds a price under the name of what the line's substance is bought
// as, when the line names the bare substance.
func (s *shelf) delivered(l *levigate.Line) *offer {
	if l.Match.Delivered == nil {
		return nil
	}
	return s.offers[l.Match.Delivered]
}

func joined(words []string, most int) string {
	if len(words) > most {
		words = append(slices.Clone(words[:most]), fmt.Sprintf("and %d more", len(words)-most))
	}
	return strings.Join(words, ", ")
}
