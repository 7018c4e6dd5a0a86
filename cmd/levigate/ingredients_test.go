package main

import (
	"encoding/csv"
	"encoding/json"
	"strings"
	"testing"
)

// mask has one of everything: a blend in ranges, a tie, exactly 1 %, a plant
// without a US name, a colourant, names a spreadsheet would take for formulas.
const mask = `levigate: formula/1
code: "=T-3"
name: Rose clay
product: other-rinse-off
markets: [eu, us]
lines:
  - {phase: A, material: Aqua, qs: true}
  - {phase: A, material: Blend, percent: 40}
  - {phase: B, material: Kaolin, percent: 8}
  - {phase: B, material: Glycerin, percent: 8}
  - {phase: B, material: Hedge extract, percent: 1}
  - {phase: C, material: CI 77491, percent: 2}
  - {phase: C, material: Sodium Benzoate, percent: 0.4}
materials:
  - name: Blend
    composition: [{inci: Cetearyl Alcohol, percent: 60, low: 40, high: 70}, {inci: Ceteareth-20, percent: 40, low: 30, high: 60}]
  - name: Hedge extract
    composition: [{inci: "+Crataegus Fruit Extract", percent: 100}]
`

const maskSays = `=T-3 · Rose clay · ingredient list, draft

European Union
Ingredients: Aqua, Cetearyl Alcohol, Ceteareth-20, Glycerin, Kaolin, +Crataegus Fruit Extract,
Sodium Benzoate, CI 77491

     name                           %        between  lines  order
  1  Aqua                      40.600                     1
  2  Cetearyl Alcohol          24.000  16.000–28.000      2  not certain
  3  Ceteareth-20              16.000  12.000–24.000      2  not certain
  4  Glycerin                   8.000                     4
  5  Kaolin                     8.000                     3  tie with the one above
  6  +Crataegus Fruit Extract   1.000                     5
  7  Sodium Benzoate            0.400                     7  below 1 %, any order
  8  CI 77491                   2.000                     6  colourant, last in any order

United States
Ingredients: Water, Cetearyl Alcohol, Ceteareth-20, Glycerin, Kaolin, [US name missing], Sodium
Benzoate, Iron Oxides
`

func TestIngredientsText(t *testing.T) {
	path := write(t, "mask.formula.yaml", mask)
	r := started(t, "", "ingredients", path)
	if !strings.HasPrefix(r.out, maskSays) || r.status != 0 || r.err != "" {
		t.Errorf("status %d, err %q, says\n%s\nwant\n%s", r.status, r.err, r.out, maskSays)
	}
	for _, want := range []string{"name missing: +Crataegus Fruit", "not above 1 %, any order", "▲ answer L01:", "◆ cannot tell L02:", "A draft, for the assessor"} {
		if strings.Count(r.out, want) == 0 {
			t.Errorf("does not say %q", want)
		}
	}
	for _, line := range strings.Split(r.out, "\n") {
		if n := len([]rune(line)); n > width {
			t.Errorf("%d columns: %s", n, line)
		}
	}
}

// A name, a code or a file that begins like a formula of a spreadsheet is text;
// numbers stay numbers.
func TestIngredientsCSV(t *testing.T) {
	r := started(t, mask, "ingredients", "-", "--format", "csv")
	rows, err := csv.NewReader(strings.NewReader(r.out)).ReadAll()
	if err != nil || len(rows) != 1+2*8 {
		t.Fatal(err, r.out)
	}
	for _, row := range rows[1:] {
		for i, cell := range row {
			if strings.ContainsAny(cell[:min(1, len(cell))], "=+-@") {
				t.Errorf("%s: cell %q", rows[0][i], cell)
			}
		}
	}
	if got := strings.Join(rows[6], "|"); got != "'-|'=T-3|eu|6|'+Crataegus Fruit Extract|'+Crataegus Fruit Extract|1|1|1|false|false|false|false|5" {
		t.Error(got)
	}
	if !strings.Contains(r.err, "L01: ") {
		t.Errorf("findings belong on the error output: %q", r.err)
	}
	for in, want := range map[string]string{"=1+1": "'=1+1", "@x": "'@x", " -x": "' -x", "\t=x": "'\t=x", "a=b": "a=b", "": "", "2": "2"} {
		if got := cellText(in); got != want {
			t.Errorf("cellText(%q) = %q, want %q", in, got, want)
		}
	}
}

func TestIngredientsJSON(t *testing.T) {
	var one struct {
		Schema      string
		Lists       []struct{ Market, Text string }
		Ingredients []struct{ Name *string }
		Findings    []struct{ Rule string }
	}
	r := started(t, mask, "ingredients", "-", "--format", "json", "--market", "us")
	if err := json.Unmarshal([]byte(r.out), &one); err != nil || one.Schema != "levigate/ingredients/1" {
		t.Fatal(err, r.out)
	}
	if len(one.Lists) != 1 || one.Lists[0].Market != "us" || len(one.Ingredients) != 8 || one.Ingredients[5].Name != nil || len(one.Findings) != 2 {
		t.Errorf("%+v", one)
	}
	var all []map[string]any
	r = started(t, "", "ingredients", example("HP-01"), "nowhere", "--format", "json")
	if err := json.Unmarshal([]byte(r.out), &all); err != nil || len(all) != 2 || all[1]["schema"] != "levigate/error/1" || r.status != 2 {
		t.Errorf("%v, status %d: %.200s", err, r.status, r.out)
	}
}

func TestIngredientsStatus(t *testing.T) {
	for name, c := range map[string]struct {
		args []string
		want int
	}{
		"a list":                   {[]string{example("HP-01")}, 0},
		"a stop":                   {[]string{example("NG-09"), "--format", "csv"}, 1},
		"no such file":             {[]string{example("HP-01"), "nowhere"}, 2},
		"no such market":           {[]string{example("HP-01"), "--market", "moon"}, 2},
		"no such format":           {[]string{example("HP-01"), "--format", "pdf"}, 2},
		"the standard input twice": {[]string{"-", "-"}, 2},
		"help":                     {[]string{"--help"}, 0},
	} {
		r := started(t, "", append([]string{"ingredients"}, c.args...)...)
		if r.status != c.want || c.want == 2 && !strings.Contains(r.err, "help") {
			t.Errorf("%s: status %d, err %q", name, r.status, r.err)
		}
	}
	r := started(t, strings.Replace(mask, "[eu, us]", "[moon]", 1), "ingredients", "-")
	if !strings.Contains(r.out, "No list for moon: only the rules of eu, gb, us are on file.") || strings.Contains(r.out, "Ingredients:") {
		t.Errorf("a market without rules: %s", r.out)
	}
	if r := started(t, "", "ingredients", "--help"); !strings.Contains(strings.Join(strings.Fields(r.out), " "), "Exit status: 0 done; 1 something") {
		t.Errorf("help: %s", r.out)
	}
}
