package wire

import (
	"encoding/json"
	"math/big"
	"testing"
	"time"

	"levigate"
	"levigate/quantity"
)

// Lines count from 1 outside, what is missing or was not asked is null, and lists
// are lists.
func TestCostingShape(t *testing.T) {
	dec := quantity.MustDecimal
	price := levigate.Price{Material: "x", Paid: dec("1"), Currency: "EUR", Pack: "1 oz", Grams: big.NewRat(28349523125, 1e9), Date: time.Date(2025, 1, 2, 0, 0, 0, 0, time.UTC), Place: levigate.Place{Line: 7}}
	c := levigate.Costing{
		Formula: &levigate.Formula{}, Day: time.Date(2026, 7, 15, 0, 0, 0, 0, time.UTC), Yield: dec("100"), Priced: dec("60"),
		Missing: []int{1}, Currencies: []levigate.CurrencyCost{{Currency: "EUR", Lines: []int{0}, Sum: dec("21"), Priced: dec("60")}},
		Lines: []levigate.CostLine{{Percent: dec("60"), Price: &price, Cost: dec("21")}, {Line: 1, Percent: dec("40")}},
	}
	out, err := json.Marshal(CostingOf(&c, "f", "p", Made{}))
	if err != nil {
		t.Fatal(err)
	}
	var back map[string]any
	if err := json.Unmarshal(out, &back); err != nil {
		t.Fatal(err)
	}
	for _, key := range []string{"total", "bulk", "unit", "fill", "weighed", "mover"} {
		if v, there := back[key]; v != nil || !there {
			t.Errorf("%s is %v, there: %v", key, v, there)
		}
	}
	if back["schema"] != "levigate/costing/1" || back["currency"] != "EUR" || back["day"] != "2026-07-15" || back["yield-stated"] != false || back["missing"].([]any)[0] != 2.0 || back["notes"] == nil {
		t.Errorf("%s", out)
	}
	first, second := back["lines"].([]any)[0].(map[string]any), back["lines"].([]any)[1].(map[string]any)
	if second["price"] != nil || second["cost"] != nil || second["line"] != 2.0 || second["notes"] == nil || first["share"] != nil || first["in-unit"] != nil {
		t.Errorf("%v %v", first, second)
	}
	p := first["price"].(map[string]any)
	if p["freight"] != nil || p["line"] != 7.0 || p["old"] != true || p["grams"] != 28.349523 || p["date"] != "2025-01-02" {
		t.Errorf("%v", p)
	}
	if x := back["currencies"].([]any)[0].(map[string]any); x["lines"].([]any)[0] != 1.0 || x["sum"] != 21.0 {
		t.Errorf("%v", x)
	}
}
