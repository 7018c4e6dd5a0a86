package wire

import (
	"bytes"
	"encoding/json"
	"flag"
	"math"
	"os"
	"slices"
	"testing"

	"levigate"
	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// example is a formula check with one of everything, made by hand.
func example() *levigate.Assessment {
	m := &levigate.Material{Code: "TW", Name: "Tap water", Origin: levigate.OfFormula, Declared: []levigate.Share{{INCI: "Aqua", Percent: levigate.Exactly(100)}}}
	method := &work.Method{ID: "made.up", Title: "Made up"}
	rec := work.NewRecorder("Made up")
	rec.Say("two and two")
	rec.Show("terms", &work.Table{Head: []string{"a"}, Rows: [][]string{{"2"}}, Foot: []string{"2"}})
	f := work.Figure{ID: "water.total", Title: "Total water", Unit: quantity.GramPer100g, State: work.OutOfRange, Grade: cite.Estimated, Method: method,
		Sources: []cite.Ref{{Key: "trade-practice", At: "row 1"}}, Notes: []string{"too hot"}, Reading: "r1", Calculated: &work.Band{Value: 3, Low: 2, High: 4}, Working: rec.Step()}
	f.SetBand(3.5, []work.Move{
		{Cause: &work.Cause{Name: "the tap"}, Low: -1, High: 0.5},
		{Cause: &work.Cause{Name: "the well", NotStated: true}},
	}, 0, 100)
	return &levigate.Assessment{
		Formula: &levigate.Formula{Code: "T-1", Name: "Tea", Product: "bath", Batch: quantity.MustDecimal("200"),
			Lines: []levigate.Line{{Phase: "A", Name: "tap water", Percent: quantity.MustDecimal("97.25"), QS: true, Match: levigate.Match{Material: m}}, {Phase: "A", Name: "leaf", Percent: quantity.MustDecimal("2.75")}}},
		Conditions: levigate.Conditions{Temperature: 25, Humidity: 60},
		Composition: levigate.Composition{
			Contained: []levigate.Contained{{INCI: "Aqua", Percent: levigate.Exactly(97.25), Volume: 97.5, From: []int{0}}},
			Held:      []levigate.Held{{Kind: levigate.Water, Name: "water", Grams: levigate.Range{Typical: 97.5, Low: 97.3, High: 97.7}, From: []int{0, 1}}},
		},
		Figures: levigate.Figures{f, work.None("water.activity", "Water activity", quantity.One, method, "needs leaf")},
		Curves: []levigate.Curve{{ID: "water.isotherm", X: levigate.Axis{Unit: "1", Values: []float64{0.5}}, Y: levigate.Axis{Unit: "g/100 g", Values: []float64{4}},
			Low: []float64{3}, High: []float64{5}, Marks: []levigate.CurveMark{{ID: "formula", Text: "this formula", X: 0.5, ToX: 0.5, Y: 4}}}},
		Findings: []levigate.Finding{{Rule: "W99", Row: "r", Name: "wet", Severity: levigate.Warn, Verdict: levigate.CannotTell, At: []string{"lines/0", "figures/water.total", "phases/B"},
			Text: "It is wet.", Help: "dry it", Needs: "a towel", Args: map[string]any{"n": 2, "share": 0.5}, Sources: []cite.Ref{{Key: "trade-practice"}}}},
	}
}

var made = Made{Program: "levigate test", Refdata: "0123"}

// The golden file is the contract in a form one can read. It is pinned; the
// keys it shows were compared with the contract by hand.
func TestAssessmentGolden(t *testing.T) {
	got, err := json.MarshalIndent(Of(example(), "t.formula.yaml", made), "", "  ")
	if err != nil {
		t.Fatal(err)
	}
	got = append(got, '\n')
	const path = "testdata/assessment.json"
	if *update {
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("%s differs; got\n%s", path, got)
	}
}

// The program counts lines from 0; outside, from and at both count from 1.
func TestLinesCountFromOne(t *testing.T) {
	a := Of(example(), "", made)
	if a.Composition[0].From[0] != 1 || a.Held[0].From[1] != 2 {
		t.Errorf("from counts otherwise: %v %v", a.Composition[0].From, a.Held[0].From)
	}
	if want := []string{"lines/1", "figures/water.total", "phases/B"}; !slices.Equal(a.Findings[0].At, want) {
		t.Errorf("at is %v, want %v", a.Findings[0].At, want)
	}
}

// A reader finds null where a calculation gave no number, never a file it
// cannot read. Without the guard encoding/json refuses the whole answer.
func TestNoNumberIsNull(t *testing.T) {
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		a := example()
		a.Figures[0].Value, a.Figures[0].High = bad, bad
		a.Figures[0].Moves[0].Low = bad
		a.Figures[0].Calculated.Low = bad
		a.Curves[0].Y.Values[0], a.Curves[0].Low[0], a.Curves[0].Marks[0].X = bad, bad, bad
		a.Composition.Held[0].Grams.High = bad
		a.Composition.Contained[0].Moles = bad
		a.Findings[0].Args["share"] = bad
		out, err := json.Marshal(Of(a, "", made))
		if err != nil {
			t.Fatal(err)
		}
		var back map[string]any
		if err := json.Unmarshal(out, &back); err != nil {
			t.Fatal(err)
		}
		if v := back["figures"].([]any)[0].(map[string]any)["value"]; v != nil {
			t.Errorf("%g came out as %v", bad, v)
		}
	}
}

// Lists are lists even when there is nothing in them, and every key is there.
func TestEmptyIsEmptyNotNull(t *testing.T) {
	out, err := json.Marshal(Of(&levigate.Assessment{Formula: &levigate.Formula{}}, "f", Made{}))
	if err != nil {
		t.Fatal(err)
	}
	var back map[string]json.RawMessage
	if err := json.Unmarshal(out, &back); err != nil {
		t.Fatal(err)
	}
	for _, key := range []string{"composition", "held", "figures", "curves", "findings", "ingredients"} {
		if string(back[key]) != "[]" {
			t.Errorf("%s is %s, want []", key, back[key])
		}
	}
	for _, key := range []string{"schema", "file", "made", "conditions", "formula"} {
		if len(back[key]) == 0 {
			t.Errorf("%s is not there", key)
		}
	}
}

func TestErrorShape(t *testing.T) {
	out, err := json.Marshal(ErrorOf("x.yaml", []levigate.Problem{{Place: levigate.Place{Line: 3, Column: 7}, Text: "what", Help: "do"}, {Text: "whole file"}}))
	want := `{"schema":"levigate/error/1","file":"x.yaml","errors":[{"line":3,"column":7,"text":"what","help":"do"},{"line":1,"column":1,"text":"whole file","help":""}]}`
	if err != nil || string(out) != want {
		t.Errorf("got %s, %v", out, err)
	}
}
