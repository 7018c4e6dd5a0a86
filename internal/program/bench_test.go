package program

import (
	"context"
	"encoding/json"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"levigate"
	"levigate/internal/api"
	"levigate/internal/store/sqlite/sqlitetest"
	"levigate/rules"
)

// Whatever stands on a sheet, its check comes out whole, with curves and a
// working, can be written as JSON, points at rows that are there, and promises
// nothing.
func TestAnySheetIsChecked(t *testing.T) {
	b := NewBench(New(), sqlitetest.Open(t))
	names := []string{"Glycerin", "Aqua", "Kaolin", "Sunflower oil, high-oleic, refined", "Sodium Chloride", "Beeswax", "Honey, runny", "Xanthan Gum", "no such thing", ""}
	percents := []string{"", "qs", "0", "5", "12,5", "40", "100", "1e9", "999999999999", "x"}
	rapid.Check(t, func(t *rapid.T) {
		d := &levigate.Draft{Document: levigate.Document{Head: map[string]string{
			"product": rapid.SampledFrom(append([]string{"", "spaceship"}, levigate.Products...)).Draw(t, "product"),
			"batch":   rapid.SampledFrom([]string{"", "500 g", "0 g", "much"}).Draw(t, "batch"), "claims": "low-water", "markets": "eu, us, moon",
			"temperature": rapid.SampledFrom([]string{"", "5", "−3", "200"}).Draw(t, "temperature"),
		}}}
		rows := map[string]bool{}
		for i := range rapid.IntRange(0, 7).Draw(t, "lines") {
			r := levigate.Row{ID: string(rune('a' + i)), Cells: map[string]string{
				"material": rapid.SampledFrom(names).Draw(t, "material"), "percent": rapid.SampledFrom(percents).Draw(t, "percent")}}
			rows[r.ID] = true
			d.Document.Lines = append(d.Document.Lines, r)
		}
		c, err := b.check(context.Background(), d, api.Ask{Curves: true, Working: "water.activity"})
		if err != nil {
			t.Fatal(err)
		}
		if _, err := json.Marshal(c.wire); err != nil {
			t.Fatal(err)
		}
		if len(c.wire.Rows) != len(c.wire.Assessment.Formula.Lines) {
			t.Fatalf("%d rows, %d lines", len(c.wire.Rows), len(c.wire.Assessment.Formula.Lines))
		}
		said := c.wire.Answer
		for _, n := range c.wire.Margin {
			said += n.Text + n.Help + n.Needs
			for _, r := range n.Rows {
				if !rows[r] {
					t.Fatalf("%s points at row %q", n.Rule, r)
				}
			}
		}
		for _, p := range c.wire.Problems {
			said += p.Text + p.Help
			if p.Row != "" && !rows[p.Row] || p.Text == "" || p.Help == "" {
				t.Fatalf("%+v", p)
			}
		}
		if bad := rules.NeverSaid(said); len(bad) > 0 {
			t.Fatalf("it says %q", bad)
		}
	})
}

// A line that could not be opened is named at its cell and not again beside it.
func TestUnknownLineIsNamedOnce(t *testing.T) {
	b := NewBench(New(), sqlitetest.Open(t))
	d := &levigate.Draft{Document: levigate.Document{Head: map[string]string{"product": "bath"}, Lines: []levigate.Row{
		{ID: "a", Cells: map[string]string{"material": "Glycerinne", "percent": "100"}}}}}
	c, err := b.check(context.Background(), d, api.Ask{})
	if err != nil {
		t.Fatal(err)
	}
	if len(c.wire.Problems) != 1 || c.wire.Problems[0].Field != "material" || !strings.Contains(c.wire.Problems[0].Help, "Glycerine") {
		t.Errorf("%+v", c.wire.Problems)
	}
	for _, n := range c.wire.Margin {
		if n.Rule == unopened && len(n.Rows) > 0 {
			t.Errorf("said twice: %+v", n)
		}
	}
}
