package wire

import (
	"encoding/json"
	"math"
	"testing"

	"levigate"
)

// One place each: in the ordered part, tied and doubted, open, last.
func listed() *levigate.Assessment {
	a := example()
	a.Formula.Markets = []string{"us", "moon"}
	a.Ingredients = levigate.Ingredients{
		{Market: "us", Name: "Water", INCI: []string{"Aqua"}, Percent: levigate.Range{Typical: 97.25, Low: 90, High: 98}, Tie: true, Uncertain: true, From: []int{0, 1}},
		{Market: "us", INCI: []string{"Vitis Vinifera Seed Oil"}, Percent: levigate.Exactly(0.5), Below1: true, From: []int{1}},
		{Market: "us", Name: "Iron Oxides", INCI: []string{"CI 77491", "CI 77492"}, Percent: levigate.Exactly(2), Colourant: true, From: []int{1}},
	}
	return a
}

func TestIngredientShape(t *testing.T) {
	got, err := json.Marshal(Of(listed(), "", made).Ingredients)
	want := `[{"name":"Water","market":"us","inci":["Aqua"],"percent":97.25,"low":90,"high":98,` +
		`"below-one":false,"tie":true,"uncertain":true,"colourant":false,"from":[1,2]},` +
		`{"name":null,"market":"us","inci":["Vitis Vinifera Seed Oil"],"percent":0.5,"low":0.5,"high":0.5,` +
		`"below-one":true,"tie":false,"uncertain":false,"colourant":false,"from":[2]},` +
		`{"name":"Iron Oxides","market":"us","inci":["CI 77491","CI 77492"],"percent":2,"low":2,"high":2,` +
		`"below-one":false,"tie":false,"uncertain":false,"colourant":true,"from":[2]}]`
	if err != nil || string(got) != want {
		t.Errorf("%v\n%s\nwant\n%s", err, got, want)
	}
}

func TestIngredientLists(t *testing.T) {
	a := listed()
	out := IngredientsOf(a, "t.yaml", "a draft", made, a.Findings)
	if out.Schema != IngredientsSchema || len(out.Lists) != 1 || out.Lists[0].Text != "Water, [US name missing], Iron Oxides" ||
		len(out.Others) != 1 || len(out.Findings) != 1 || len(out.Ingredients) != 3 {
		t.Errorf("%+v", out)
	}
	a.Ingredients[0].Percent.High = math.Inf(1)
	if _, err := json.Marshal(IngredientsOf(a, "", "", made, nil)); err != nil {
		t.Error(err)
	}
	got, err := json.Marshal(IngredientsOf(&levigate.Assessment{Formula: &levigate.Formula{}}, "f", "d", Made{}, nil))
	want := `{"schema":"levigate/ingredients/1","file":"f","made":{"program":"","refdata":"","workspace":""},"code":"","name":"","draft":"d",` +
		`"lists":[{"market":"eu","text":""}],"others":[],"ingredients":[],"findings":[]}`
	if err != nil || string(got) != want {
		t.Errorf("%v %s", err, got)
	}
}
