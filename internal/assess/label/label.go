// Package label makes what is printed on the pack; so far the ingredient list.
//
// It stands on what is declared, never on what is held: the moisture of a
// starch, the trace in a dry glycerin and the water inside honey, juice or
// hydrosol are no Aqua on a label, the water of a solution is.
//
// Glossary: a share is a substance's percentage by weight as added; a place is
// one entry of the list; the free places are those of so little that the law
// leaves their order open.
package label

import "levigate/internal/assess/part"

// Part makes the ingredient list of every market the formula is for.
var Part = part.Part{Name: "label", Run: run}

func run(s *part.Sheet) {
	if len(s.Composition.Unopened) > 0 {
		return // a list with a gap in it would look like a list
	}
	markets, _ := s.Formula.ListMarkets()
	for _, m := range markets {
		s.Ingredients = append(s.Ingredients, list(s.Composition.Contained, m)...)
	}
}
