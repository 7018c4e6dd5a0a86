package render

import (
	"flag"
	"os"
	"path/filepath"
	"testing"

	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// golden compares with testdata/NAME. The files are pinned: they show that
// something moved, not that it was right.
func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s differs; got\n%s", path, got)
	}
}

// tea is a made-up figure with every part a figure can have. Its names hold
// what a page must escape.
func tea() *work.Figure {
	strength := &work.Method{
		ID: "tea.strength", Title: "Strength of a cup, own rule", Text: "leaf × draw / (water + milk)", Unit: quantity.GramPer100g,
		Accuracy: "not stated; <b>taste</b> it",
		Symbols: []work.Symbol{
			{Name: "leaf", Means: "dry leaf", Unit: quantity.Gram}, {Name: "draw", Means: "share drawn in three minutes", Unit: quantity.One},
			{Name: "water", Means: "water", Unit: quantity.Gram}, {Name: "milk", Means: "milk & what is like it", Unit: quantity.Gram},
		},
		Sources: []cite.Ref{{Key: "trade-practice"}},
	}
	rec := work.NewRecorder("Strength")
	rec.Say("What is drawn from the leaf is shared out evenly in the cup; a spoon left in it takes none, however long it stands, and a lid over it changes nothing at all.")
	rec.Equation(strength, 0.5921, work.Input{Value: 2.5, Grade: cite.MeasuredHere, From: "balance, line 1"},
		work.Input{Value: 0.45, Grade: cite.Estimated, From: "a row on file"}, work.Input{Value: 180, Grade: cite.MeasuredHere, From: "balance, line 2"},
		work.Input{Value: 10, Grade: cite.Assumed, From: "isotherms/milk, row 1"})
	rec.Begin("the cup")
	rec.Show("what is in it", &work.Table{Head: []string{"part", "lines", "g"},
		Rows: [][]string{{"water", "2", "180.0"}, {"an uncommonly long name for a very small amount of milk from a cow that nobody can be asked about any more", "3, 4", "10.0"}},
		Foot: []string{"sum", "", "190.0"}})
	rec.Cite(cite.Ref{Key: "trade-practice", At: "row 7"}, cite.Ref{Key: "trade-practice", At: "row 7"})
	rec.End()
	f := &work.Figure{ID: "tea.strength", Title: "Strength", Unit: quantity.GramPer100g, State: work.OutOfRange, Grade: cite.Assumed,
		Method: strength, Sources: strength.Sources, Notes: []string{"the leaf is older than 2 years, which the rule was not stated for"}, Working: rec.Step()}
	f.SetBand(0.592, []work.Move{
		{Cause: &work.Cause{Key: "a", Name: "dust <in> the leaf", NotStated: true, Settle: "sieve it"}},
		{Cause: &work.Cause{Key: "b", Name: "the draw", Grade: cite.Estimated, Settle: "weigh the dried leaf"}, Low: -0.08, High: 0.11},
		{Cause: &work.Cause{Key: "c", Name: "the balance", Grade: cite.MeasuredHere, Settle: "weigh again"}, Low: 0.004, High: -0.004},
	}, 0, 100)
	return f
}

func absent() *work.Figure {
	f := work.None("tea.colour", "Colour", quantity.One, nil, "needs the leaf of line 9")
	return &f
}

func TestText(t *testing.T) {
	golden(t, "tea.txt", Text(tea(), 80)+"\n"+Text(absent(), 80))
}

func TestHTML(t *testing.T) {
	got, err := HTML(tea())
	if err != nil {
		t.Fatal(err)
	}
	none, err := HTML(absent())
	if err != nil {
		t.Fatal(err)
	}
	golden(t, "tea.html", string(got+none))
}
