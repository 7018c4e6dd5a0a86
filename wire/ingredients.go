package wire

import "levigate"

// IngredientsSchema names this edition of the answer of the ingredients
// command.
const IngredientsSchema = "levigate/ingredients/1"

// Ingredient is one place in the ingredient list of one market, in the order
// it is printed.
type Ingredient struct {
	Name      *string  `json:"name"` // null when no name is on file for the market
	Market    string   `json:"market"`
	INCI      []string `json:"inci"` // what stands behind it, by library name
	Percent   *float64 `json:"percent"`
	Low       *float64 `json:"low"`
	High      *float64 `json:"high"`
	BelowOne  bool     `json:"below-one"` // little enough to stand in any order behind the others
	Tie       bool     `json:"tie"`       // as much as the one before it
	Uncertain bool     `json:"uncertain"` // its range overlaps another's, or crosses 1 %
	Colourant bool     `json:"colourant"`
	From      []int    `json:"from"` // lines, from 1
}

// IngredientLists is what the ingredients command answers for one file.
type IngredientLists struct {
	Schema      string           `json:"schema"`
	File        string           `json:"file"`
	Made        Made             `json:"made"`
	Code        string           `json:"code"`
	Name        string           `json:"name"`
	Draft       string           `json:"draft"` // what the lists are not
	Lists       []IngredientList `json:"lists"`
	Others      []string         `json:"others"` // markets named whose rules are not on file
	Ingredients []Ingredient     `json:"ingredients"`
	Findings    []Finding        `json:"findings"` // those about the list, and what blocks release
}

// IngredientList is one market's list as a line for a pack.
type IngredientList struct {
	Market string `json:"market"`
	Text   string `json:"text"`
}

// IngredientsOf turns the ingredient lists of a formula check into JSON's
// shape; findings are those of it that are about the list.
func IngredientsOf(a *levigate.Assessment, file, draft string, made Made, findings []levigate.Finding) IngredientLists {
	markets, others := a.Formula.ListMarkets()
	out := IngredientLists{
		Schema: IngredientsSchema, File: file, Made: made, Code: a.Formula.Code, Name: a.Formula.Name, Draft: draft,
		Lists: []IngredientList{}, Others: list(others),
		Ingredients: each(a.Ingredients, ingredientOf), Findings: each(findings, findingOf),
	}
	for _, m := range markets {
		out.Lists = append(out.Lists, IngredientList{m, a.Ingredients.Of(m).Line()})
	}
	return out
}

func ingredientOf(i *levigate.Ingredient) Ingredient {
	out := Ingredient{
		Market: i.Market, INCI: list(i.INCI),
		Percent: share(i.Percent.Typical), Low: share(i.Percent.Low), High: share(i.Percent.High),
		BelowOne: i.Below1, Tie: i.Tie, Uncertain: i.Uncertain, Colourant: i.Colourant, From: fromOne(i.From),
	}
	if i.Name != "" {
		out.Name = &i.Name
	}
	return out
}
