package main

import (
	"encoding/csv"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"levigate"
	"levigate/quantity"
	"levigate/rules"
)

var priceList = filepath.Join("..", "..", "examples", "prices.csv")

// on is a day on which all prices of the example are known.
const on = "--on=2026-07-15"

// The costing a person reads, whole. Pinned; the total was added up by hand from
// the packs on the example list. LEVIGATE_UPDATE=1 rewrites it.
func TestCostGolden(t *testing.T) {
	missing := write(t, "prices.csv", strings.ReplaceAll(string(bytesOf(t, priceList)), "\"Kaolin, fine white\"", "# none left: kaolin"))
	for name, args := range map[string][]string{
		"cost-HP-01":         {"--prices", priceList, "--fill=50g", "--yield=92"},
		"cost-HP-01-missing": {"--prices", missing},
	} {
		r := started(t, "", append([]string{"cost", example("HP-01"), on}, args...)...)
		path := "testdata/" + name + ".txt"
		if os.Getenv("LEVIGATE_UPDATE") != "" {
			if err := os.WriteFile(path, []byte(r.out), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		if want := bytesOf(t, path); r.out != string(want) {
			t.Errorf("%s differs:\n%s%s", path, r.out, r.err)
		}
	}
}

func bytesOf(t *testing.T, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func TestCostExitStatus(t *testing.T) {
	hp := example("HP-01")
	broken := write(t, "broken.formula.yaml", "levigate: formula/1\ncode: [")
	short := write(t, "short.formula.yaml", strings.Replace(tea, "qs: true", "percent: 50", 1))
	const head = "material,paid,currency,pack,date\n"
	bad := write(t, "bad.csv", head+"Aqua,1,EUR,1 L,2026-01-01\n")
	twice := write(t, "twice.csv", head+"Aqua,1,EUR,1 kg,2026-01-01\nAQUA,2,EUR,1 kg,2026-01-01\n")
	two := write(t, "two.csv", head+"Aqua,1,EUR,1 kg,2026-01-01\nGlycerin,2,USD,1 kg,2026-01-01\n")
	few := write(t, "few.csv", head+"Aqua,1,EUR,1 kg,2026-01-01\nMoonlight,2,EUR,1 kg,2026-01-01\n")
	bare := write(t, "tea.formula.yaml", tea)
	for name, c := range map[string]struct {
		args []string
		want int
		says string
	}{
		"no yield":            {[]string{hp, "--prices", priceList}, 0, "No making yield is stated"},
		"yield with sign":     {[]string{hp, "--prices", priceList, "--yield", "92 %"}, 0, "making yield of 92 %"},
		"two currencies":      {[]string{bare, "--prices", two}, 0, "No total: the prices are in USD (line 1) and EUR (line 2)"},
		"prices missing":      {[]string{hp, "--prices", few}, 0, "Priced so far: 0.0200 EUR for 2.00 % of the weight. That is not the cost"},
		"a stranger":          {[]string{hp, "--prices", few}, 0, "not used: \"Moonlight\" (line 3)"},
		"missing, CSV":        {[]string{hp, "--prices", two, "--format=csv"}, 0, "levigate: No total"},
		"before any price":    {[]string{hp, "--prices", priceList, "--on=2024-01-01"}, 0, "10 of 10 lines have no price"},
		"no list":             {[]string{hp}, 2, "no price list is named"},
		"no such list":        {[]string{hp, "--prices", "nowhere"}, 2, "nowhere:1:1: does not exist"},
		"list is a folder":    {[]string{hp, "--prices", "testdata"}, 2, "is a folder"},
		"list is a formula":   {[]string{hp, "--prices", hp}, 2, "no heading of a price list"},
		"bad list":            {[]string{hp, "--prices", bad}, 2, `bad.csv:2:12: column "pack": "1 L" is a volume`},
		"one day twice":       {[]string{hp, "--prices", twice}, 2, "line 2 and line 3 both price"},
		"both broken":         {[]string{broken, "--prices", bad}, 2, "broken.formula.yaml:"},
		"both broken, list":   {[]string{broken, "--prices", bad}, 2, "bad.csv:2"},
		"both broken, JSON":   {[]string{broken, "--prices", bad, "--format=json"}, 2, "levigate/error/1"},
		"comes to 90":         {[]string{short, "--prices", priceList}, 2, "90 %, not 100"},
		"yield as a fraction": {[]string{hp, "--prices", priceList, "--yield=0.92"}, 2, "between 1 and 100"},
		"yield in words":      {[]string{hp, "--prices", priceList, "--yield=most"}, 2, "yield:"},
		"fill by volume":      {[]string{hp, "--prices", priceList, "--fill=50 mL"}, 2, "density"},
		"fill without unit":   {[]string{hp, "--prices", priceList, "--fill=50"}, 2, "no unit"},
		"day turned round":    {[]string{hp, "--prices", priceList, "--on=15/07/2026"}, 2, "on:"},
		"day to come":         {[]string{hp, "--prices", priceList, "--on=2999-01-01"}, 2, "not after today"},
		"help":                {[]string{"--help"}, 0, "Exit status"},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			r := started(t, "", append([]string{"cost"}, c.args...)...)
			if r.status != c.want || !strings.Contains(strings.Join(strings.Fields(r.out+r.err), " "), c.says) {
				t.Errorf("status %d, want %d; out %.300q err %q", r.status, c.want, r.out, r.err)
			}
			if c.want == 2 && !strings.Contains(r.out+r.err, "help") {
				t.Errorf("no help in %q", r.err)
			}
		})
	}
}

func TestCostJSON(t *testing.T) {
	var c struct {
		Schema      string
		Currency    string
		Total, Unit json.Number
		Lines       []struct {
			Cost  json.Number
			Price struct{ Landed json.Number }
		}
	}
	r := started(t, "", "cost", example("CM-03"), "--prices", priceList, on, "--fill=75 g", "--format=json")
	if err := json.Unmarshal([]byte(r.out), &c); err != nil || c.Schema != "levigate/costing/1" || c.Currency != "EUR" || len(c.Lines) != 9 {
		t.Fatalf("%v %.300s", err, r.out)
	}
	var sum quantity.Decimal
	for _, l := range c.Lines {
		sum = sum.Add(quantity.MustDecimal(l.Cost.String()))
	}
	if sum.String() != c.Total.String() || c.Lines[1].Price.Landed != "8.6667" {
		t.Errorf("the lines come to %s, the total is %s", sum, c.Total)
	}
}

// A name that a spreadsheet would run stands as text, from the formula and from
// the list.
func TestCostCSV(t *testing.T) {
	file := write(t, "evil.formula.yaml", `levigate: formula/1
code: E-1
name: Evil
product: bath
lines:
  - {phase: A, material: "=1+1", percent: 40}
  - {phase: A, material: Aqua, qs: true}
materials:
  - {name: "=1+1", composition: [{inci: Glycerin, percent: 100}]}
`)
	list := write(t, "evil.csv", "material,paid,currency,pack,date,supplier\n=1+1,10,EUR,1 kg,2026-01-01,@home\nAqua,1,EUR,1 kg,2026-01-01,-x\n")
	r := started(t, "", "cost", file, "--prices", list, on, "--format=csv")
	rows, err := csv.NewReader(strings.NewReader(r.out)).ReadAll()
	if err != nil || len(rows) != 3 || rows[1][3] != "'=1+1" || rows[1][8] != "'=1+1" || rows[1][16] != "'@home" || rows[2][16] != "'-x" || rows[1][17] != "4" || r.err != "" {
		t.Errorf("%v %q %s", err, rows, r.err)
	}
}

// No costing promises what only a laboratory or the law can, or is wider than a
// page; and the example list prices all of the workshop.
func TestCostWordsAndWidth(t *testing.T) {
	for _, code := range []string{"HP-01", "CM-03", "BL-02", "CB-01", "NG-09"} {
		r := started(t, "", "cost", example(code), "--prices", priceList, on, "--fill=50g")
		if said := rules.NeverSaid(r.out); r.status != 0 || len(said) > 0 || strings.Contains(r.out, "no total") || !strings.Contains(strings.Join(strings.Fields(r.out), " "), "One fill of 50 g") {
			t.Errorf("%s: status %d, says %v %s%s", code, r.status, said, r.out, r.err)
		}
		for _, line := range strings.Split(r.out, "\n") {
			if len([]rune(line)) > width {
				t.Errorf("%s: too wide: %s", code, line)
			}
		}
	}
}

// A share is rounded once, from the amounts: 24.0451 is 24.0, not 24.05 and so 24.1.
func TestShareIsRoundedOnce(t *testing.T) {
	total := quantity.MustDecimal("1000")
	p := costingText{Costing: &levigate.Costing{Total: &total}}
	for cost, want := range map[string]string{"240.451": "24.0", "240.5": "24.1", "0.0004": "0.0", "1000": "100.0"} {
		if got := p.share(&levigate.CostLine{Cost: quantity.MustDecimal(cost)}); got != want {
			t.Errorf("%s of 1000 is %s %%, want %s", cost, got, want)
		}
	}
}

func TestPricesFromTheStandardInput(t *testing.T) {
	if r := started(t, "", "cost", example("HP-01"), "--prices", "-"); r.status != 2 || !strings.Contains(r.err, "not read from the standard input") {
		t.Errorf("status %d, %s", r.status, r.err)
	}
}
