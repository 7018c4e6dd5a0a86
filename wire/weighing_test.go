package wire

import (
	"encoding/json"
	"testing"

	"levigate"
	"levigate/quantity"
)

// Lines and balances count from 1 outside, what is not stated is null, and
// lists are lists.
func TestWeighingShape(t *testing.T) {
	dec := quantity.MustDecimal
	l := levigate.WeighingList{
		Formula: &levigate.Formula{}, Batch: dec("100"), Tolerance: dec("2"),
		Balances: []levigate.Balance{{Name: "b", Interval: dec("0.01"), Capacity: dec("2000")}}, Minima: []quantity.Decimal{dec("0.41")},
		Lines: []levigate.Weighing{{Grams: dec("100"), Can: levigate.Directly, Portions: 1, Premix: &levigate.Premix{In: 1}}},
	}
	out, err := json.Marshal(WeighingOf(&l, "f", Made{}))
	if err != nil {
		t.Fatal(err)
	}
	var back struct {
		Balances []map[string]any
		Lines    []map[string]any
		Notes    []string
	}
	if err := json.Unmarshal(out, &back); err != nil {
		t.Fatal(err)
	}
	line := back.Lines[0]
	if line["line"] != 1.0 || line["balance"] != 1.0 || line["premix"].(map[string]any)["in"] != 2.0 || line["smallest-batch"] != nil || line["grams"] != 100.0 {
		t.Errorf("%v", line)
	}
	if b := back.Balances[0]; b["repeatability"] != nil || b["minimum"] != 0.41 || back.Notes == nil {
		t.Errorf("%v, notes %v", b, back.Notes)
	}
}
