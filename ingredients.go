package levigate

import "strings"

// Markets lists those whose rules for an ingredient list are on file, as a
// formula names them.
var Markets = []string{"eu", "gb", "us"}

// Ingredient is one place in the ingredient list of one market. Substances
// that the market lists under one name share a place.
type Ingredient struct {
	Market  string
	Name    string   // as this market lists it; empty when no name is on file
	INCI    []string // what stands behind it, by library name
	Percent Range    // % w/w of the formula, as added
	// Below1 says that it is little enough to stand in any order behind the
	// others; markets differ on exactly 1 %.
	Below1    bool
	Tie       bool // as much as the one before it: either may come first
	Uncertain bool // its range overlaps another's, so that their order may turn
	Colourant bool // behind everything else, in any order
	From      []int
}

// Ingredients are the lists of one or more markets, each in the order it is
// printed. A list is a draft: the law where the product is sold decides.
type Ingredients []Ingredient

// Of is one market's list.
func (is Ingredients) Of(market string) Ingredients {
	var out Ingredients
	for _, i := range is {
		if i.Market == market {
			out = append(out, i)
		}
	}
	return out
}

// Line is the list as it is printed on a pack. A name that is not on file
// leaves an open place: the library's own name would look like an answer.
func (is Ingredients) Line() string {
	names := make([]string, len(is))
	for i := range is {
		if names[i] = is[i].Name; names[i] == "" {
			names[i] = "[" + strings.ToUpper(is[i].Market) + " name missing]"
		}
	}
	return strings.Join(names, ", ")
}

// ListMarkets says for which markets an ingredient list is made: those the
// formula names, the EU when it names none. The others are named so that
// nobody takes one market's list for theirs.
func (f *Formula) ListMarkets() (known, others []string) {
	if len(f.Markets) == 0 {
		return []string{"eu"}, nil
	}
	for _, m := range f.Markets {
		switch name := strings.ToLower(strings.TrimSpace(m)); {
		case !contains(Markets, name):
			others = append(others, m)
		case !contains(known, name):
			known = append(known, name)
		}
	}
	return known, others
}
