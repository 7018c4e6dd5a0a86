package rules

import (
	"sync"

	"levigate/refdata"
)

// pairIndex numbers every class and substance the pairs name, so that a formula
// is walked once and rows about what it does not hold cost one look each.
type pairIndex struct {
	kinds map[string]int
	rows  []indexedPair
}

type indexedPair struct {
	refdata.Pair
	a, b int
}

var (
	pairs   = sync.OnceValue(func() *pairIndex { return index(refdata.Pairs()) })
	clashes = sync.OnceValue(func() *pairIndex { return index(refdata.Clashes()) })
)

func index(rows []refdata.Pair) *pairIndex {
	x := &pairIndex{kinds: map[string]int{}}
	number := func(kind string) int {
		n, seen := x.kinds[kind]
		if !seen {
			n = len(x.kinds)
			x.kinds[kind] = n
		}
		return n
	}
	for _, p := range rows {
		x.rows = append(x.rows, indexedPair{p, number(p.A), number(p.B)})
	}
	if len(x.kinds) > mostKinds {
		panic("rules: the pairs name more kinds than mostKinds")
	}
	return x
}

// mostKinds bounds how many classes and substances the pairs may name.
const mostKinds = 128

// present says of each kind whether the formula holds it.
func (x *pairIndex) present(s *Subject) (there [mostKinds]bool) {
	mark := func(kind string) {
		if n, known := x.kinds[kind]; known {
			there[n] = true
		}
	}
	for _, m := range s.Materials() {
		for _, class := range m.Classes {
			mark(class)
		}
		for i := range m.Declared {
			share := &m.Declared[i]
			mark(share.INCI)
			if share.Substance == nil {
				continue
			}
			mark(share.Substance.INCI)
			for _, class := range share.Substance.Classes {
				mark(class)
			}
		}
	}
	return there
}
