package program

import (
	"context"
	"strings"
	"testing"

	"levigate"
	"levigate/rules"
)

func TestIngredients(t *testing.T) {
	files := []File{{Name: "t", Data: []byte(tea)}, {Name: "broken", Data: []byte("levigate: [")}}
	out, err := New().Ingredients(context.Background(), files, []string{"us", "gb"})
	if err != nil || len(out) != 2 || len(out[1].Problems) == 0 {
		t.Fatal(out, err)
	}
	a := out[0].Assessment
	if us, gb := a.Ingredients.Of("us").Line(), a.Ingredients.Of("gb").Line(); us != "Water, Glycerin" || gb != "Aqua, Glycerin" {
		t.Errorf("%s and %s", us, gb)
	}
	if a.Figures.Get("water.activity") != nil {
		t.Error("a list needs no water activity")
	}
	if _, err := New().Ingredients(context.Background(), files, []string{"moon"}); levigate.CodeOf(err) != levigate.Invalid || !strings.Contains(helpOf(err), "eu, gb, us") {
		t.Errorf("%v, help %q", err, helpOf(err))
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := New().Ingredients(ctx, files, nil); err == nil {
		t.Error("goes on when told to stop")
	}
}

// What is said beside a list: the label's own findings, a total that is off,
// and what blocks release; dust and microbes are for the formula check.
func TestListFindings(t *testing.T) {
	const clay = `levigate: formula/1
code: T-2
name: Clay
product: bath
markets: [us]
lines:
  - {phase: A, material: Kaolin, percent: 40}
  - {phase: A, material: Hedge extract, percent: 20}
materials:
  - {name: Hedge extract, composition: [{inci: Crataegus Monogyna Fruit Extract, percent: 100}]}
`
	out, err := New().Ingredients(context.Background(), []File{{Name: "t", Data: []byte(clay)}}, nil)
	if err != nil || out[0].Assessment == nil {
		t.Fatal(err, out[0].Problems)
	}
	var got []string
	for _, f := range ListFindings(out[0].Assessment) {
		got = append(got, f.Rule)
	}
	if s := strings.Join(got, " "); s != "C01 L01" {
		t.Errorf("got %s of %d findings", s, len(out[0].Assessment.Findings))
	}
}

func TestDraftPromisesNothing(t *testing.T) {
	if bad := rules.NeverSaid(Draft); len(bad) > 0 {
		t.Errorf("the draft note says %q", bad)
	}
	for _, m := range levigate.Markets {
		if MarketName(m) == "" {
			t.Errorf("%s has no name", m)
		}
	}
}

// EU is eu: a market is named, not spelled.
func TestMarketInCapitals(t *testing.T) {
	markets := []string{"EU", " us"}
	out, err := New().Ingredients(context.Background(), []File{{Name: "../../examples/HP-01.formula.yaml"}}, markets)
	if err != nil || len(out[0].Assessment.Ingredients.Of("us")) == 0 || markets[0] != "EU" {
		t.Error(err, markets)
	}
}
