package program

import (
	"context"
	"slices"
	"strings"

	"levigate"
	"levigate/wire"
)

// Draft says once what an ingredient list is not.
const Draft = "A draft, for the assessor and for the text of the law in force where the product is sold. " +
	"Allergens that have to be named beside a perfume, an essential oil or an extract are not in it yet."

// marketNames are the markets in words, for a heading.
var marketNames = map[string]string{"eu": "European Union", "gb": "Great Britain", "us": "United States"}

// MarketName names a market for a person.
func MarketName(market string) string { return marketNames[market] }

// Ingredients checks files as far as their ingredient lists need it. Markets
// take the place of those the formulas name; without them each formula's own
// stand.
func (p *Program) Ingredients(ctx context.Context, files []File, markets []string) ([]Outcome, error) {
	markets = slices.Clone(markets)
	for i, m := range markets {
		m = strings.ToLower(strings.TrimSpace(m))
		markets[i] = m
		if !slices.Contains(levigate.Markets, m) {
			return nil, invalid("market "+quoted(m)+" has no rules for an ingredient list on file", "write one or more of "+strings.Join(levigate.Markets, ", "))
		}
	}
	in := Input{Conditions: room(), Parts: []string{"label"}}
	out := make([]Outcome, len(files))
	for i, file := range files {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		out[i] = Outcome{File: file.Name}
		f, problems := p.load(file)
		if out[i].Problems = problems; f == nil {
			continue
		}
		if len(markets) > 0 {
			f.Markets = markets
		}
		out[i].Assessment = p.check(f, in)
	}
	return out, nil
}

// ListFindings are the findings that bear on an ingredient list: those of the
// label, a total that is not 100, and whatever blocks release.
func ListFindings(a *levigate.Assessment) []levigate.Finding {
	var out []levigate.Finding
	for _, f := range a.Findings {
		if strings.HasPrefix(f.Rule, "L") || f.Rule == "C01" || f.Blocks() {
			out = append(out, f)
		}
	}
	return out
}

// WireIngredients is an outcome of Ingredients in JSON's shape.
func (p *Program) WireIngredients(o *Outcome) any {
	if o.Assessment == nil {
		return wire.ErrorOf(o.File, o.Problems)
	}
	return wire.IngredientsOf(o.Assessment, o.File, Draft, p.Made(), ListFindings(o.Assessment))
}
