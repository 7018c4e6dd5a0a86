package cost

import (
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"levigate"
	"levigate/calc/cost"
	"levigate/formulafile"
	"levigate/internal/library"
	"levigate/quantity"
)

var (
	dec = quantity.MustDecimal
	day = time.Date(2026, 7, 15, 0, 0, 0, 0, time.UTC)
)

// price is one on the list: material, paid, currency, pack, freight, date; an
// empty freight is one that nobody wrote down.
func price(t *testing.T, line int, material, paid, currency, pack, freight, date string) levigate.Price {
	t.Helper()
	p := levigate.Price{Material: material, Paid: dec(paid), Currency: currency, Pack: pack, Place: levigate.Place{Line: line, Column: 1}}
	var err error
	if p.Grams, err = levigate.ParsePack(pack); err != nil {
		t.Fatal(err)
	}
	if p.Date, err = levigate.ParseDay(date, day); err != nil {
		t.Fatal(err)
	}
	if p.FreightStated = freight != ""; p.FreightStated {
		p.Freight = dec(freight)
	}
	return p
}

// formula is one of "name: percent" lines, resolved; the last fills up.
func formula(t *testing.T, lines ...string) *levigate.Formula {
	t.Helper()
	f := &levigate.Formula{}
	for _, l := range lines {
		name, percent, ok := strings.Cut(l, ": ")
		line := levigate.Line{Phase: "A", Name: name, QS: !ok}
		if ok {
			line.Percent = dec(percent)
		}
		f.Lines = append(f.Lines, line)
	}
	f.FillUp()
	if problems := f.Resolve(library.New(nil)); len(problems) > 0 {
		t.Fatal(problems)
	}
	return f
}

func costing(t *testing.T, f *levigate.Formula, yield, fill string, prices ...levigate.Price) levigate.Costing {
	t.Helper()
	ask := Ask{Prices: prices, Day: day}
	if yield != "" {
		d := dec(yield)
		ask.Yield = &d
	}
	if fill != "" {
		d := dec(fill)
		ask.Fill = &d
	}
	c, problems, err := Of(f, library.New(nil), ask)
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	return c
}

// The walnut polish by an independent sum: what was paid for each pack, taken
// from the example list by eye, as whole cents and grams.
func TestWalnutPolish(t *testing.T) {
	f, problems, err := formulafile.ReadFile("../../../examples/HP-01.formula.yaml")
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	if problems := f.Resolve(library.New(nil)); len(problems) > 0 {
		t.Fatal(problems)
	}
	var prices []levigate.Price
	sum := new(big.Rat)
	for i, x := range []struct {
		name, paid, freight, pack string
		cents, grams              int64 // landed: goods, freight and other together
		percent                   int64 // hundredths
	}{
		{"GLY-99", "58", "9.5", "25 kg", 6750, 25000, 2100},
		{"purified WATER", "4.5", "0", "10 kg", 450, 10000, 200},
		{"Sucrose laurate powder, high monoester", "42.2", "5.9", "1 kg", 4810, 1000, 300},
		{"Sunflower oil, high-oleic, refined", "61", "11.4", "20 kg", 7240, 20000, 4750},
		{"Caprylic/capric triglyceride, liquid", "37.5", "6.5", "5 kg", 4400, 5000, 800},
		{"Mixed tocopherols 70 % in sunflower oil", "19.8", "3.1", "250 g", 2290, 250, 30},
		{"Kaolin, fine white", "23", "8.8", "10 kg", 3180, 10000, 800},
		{"Maize starch", "9.6", "5.2", "5 kg", 1480, 5000, 300},
		{"Walnut shell powder, 150–400 µm", "18.7", "4.6", "2 kg", 2330, 2000, 700},
		{"Sweet orange peel oil", "12.3", "3.1", "250 g", 1540, 250, 20},
	} {
		prices = append(prices, price(t, i+2, x.name, x.paid, "EUR", x.pack, x.freight, "2026-04-01"))
		// hundredths of a percent of 1000 g, times cents a gram, in euros
		sum.Add(sum, new(big.Rat).Mul(big.NewRat(x.percent*1000, 10000), big.NewRat(x.cents, x.grams*100)))
	}
	// 0.5670 + 0.0090 + 1.4430 + 1.7195 + 0.7040 + 0.2748 + 0.2544 + 0.0888 + 0.8155 + 0.1232
	if got := sum.FloatString(5); got != "5.99920" {
		t.Fatalf("the sum by hand is %s", got)
	}
	c := costing(t, f, "92", "50", prices...)
	// Each of ten lines is rounded by at most half a ten-thousandth.
	if off := new(big.Rat).Sub(c.Total.Exact(), sum); off.Abs(off).Cmp(big.NewRat(10, 20000)) > 0 {
		t.Errorf("the total is %s, by hand %s", c.Total, sum.FloatString(6))
	}
	// 5.9992 / 0.92, and a twentieth of that.
	if c.Total.String() != "5.9992" || c.Bulk.String() != "6.5209" || c.Unit.String() != "0.326" || c.Weighed.String() != "54.3478" {
		t.Errorf("%s %s %s %s", c.Total, c.Bulk, c.Unit, c.Weighed)
	}
	if c.Mover.Lines[0] != 3 || c.Mover.Bulk.String() != "0.1869" || c.Mover.Unit.String() != "0.0093" || len(c.Notes) > 0 || c.Priced.Cmp(quantity.Hundred) != 0 {
		t.Errorf("%+v, notes %q", c.Mover, c.Notes)
	}
}

// What is missing leaves no total, however little it is.
func TestMissing(t *testing.T) {
	f := formula(t, "GLY-99: 16.5", "Maize starch: 0", "Kaolin, fine white")
	c := costing(t, f, "", "50", price(t, 2, "Kaolin, fine white", "4", "EUR", "1 kg", "0", "2026-01-01"))
	if c.Total != nil || c.Bulk != nil || c.Unit != nil || c.Mover != nil || fmt.Sprint(c.Missing) != "[0]" || c.Priced.String() != "83.5" {
		t.Errorf("%+v", c)
	}
	if x := c.Currencies; len(x) != 1 || x[0].Sum.String() != "3.34" || x[0].Priced.String() != "83.5" || c.Lines[2].Share != nil {
		t.Errorf("%+v", x)
	}
	if c := costing(t, f, "", ""); c.Total != nil || len(c.Currencies) != 0 || !c.Priced.IsZero() || len(c.Missing) != 2 {
		t.Errorf("an empty list: %+v", c)
	}
}

func TestTwoCurrencies(t *testing.T) {
	c := costing(t, formula(t, "GLY-99: 20", "Kaolin, fine white"), "", "50",
		price(t, 2, "GLY-99", "10", "EUR", "1 kg", "0", "2026-01-01"), price(t, 3, "KAOLIN, fine white", "5", "USD", "1 kg", "0", "2026-01-01"))
	if c.Total != nil || c.Unit != nil || c.Currency() != "" || len(c.Currencies) != 2 || c.Currencies[1].Currency != "USD" || c.Currencies[1].Sum.String() != "4" || c.Currencies[1].Lines[0] != 1 {
		t.Errorf("%+v", c)
	}
}

// The newest price counts; older ones, later ones and strangers are said.
func TestWhichPrice(t *testing.T) {
	f := formula(t, "GLY-99: 20", "Kaolin, fine white")
	c := costing(t, f, "", "",
		price(t, 2, "GLY-99", "10", "EUR", "1 kg", "0", "2026-01-01"),
		price(t, 3, "Glycerin, vegetable, 99.5 %", "30", "EUR", "1 kg", "0", "2026-03-01"),
		price(t, 4, "gly-99", "20", "EUR", "1 kg", "0", "2026-02-01"),
		price(t, 5, "Kaolin, fine white", "5", "EUR", "1 kg", "", "2025-07-01"),
		price(t, 6, "Castor oil", "5", "EUR", "1 kg", "0", "2026-01-01"),
		price(t, 7, "Kaolin, fine wite", "5", "EUR", "1 kg", "0", "2026-01-01"))
	if l := c.Lines[0]; l.Price.Place.Line != 3 || len(l.Notes) != 1 || l.Notes[0] != "newest of 3 on the list" {
		t.Errorf("%+v", l)
	}
	if l := c.Lines[1]; len(l.Notes) != 1 || l.Notes[0] != "over a year old" {
		t.Errorf("%+v", l)
	}
	said := strings.Join(c.Notes, "\n")
	for _, want := range []string{"No freight is written for line 2", "price of line 2 is over a year old", `"Kaolin, fine wite" (line 7; did you mean "Kaolin, fine white"?)`} {
		if !strings.Contains(said, want) {
			t.Errorf("no %q in\n%s", want, said)
		}
	}
	if strings.Contains(said, "Castor") {
		t.Errorf("a price that no line asks for is no news: %s", said)
	}
	ask := Ask{Day: time.Date(2026, 2, 15, 0, 0, 0, 0, time.UTC), Prices: []levigate.Price{
		price(t, 2, "GLY-99", "10", "EUR", "1 kg", "0", "2026-01-01"), price(t, 3, "GLY-99", "30", "EUR", "1 kg", "0", "2026-03-01")}}
	c, _, _ = Of(f, library.New(nil), ask)
	if l := c.Lines[0]; l.Price.Place.Line != 2 || !strings.Contains(strings.Join(c.Notes, "\n"), "1 price is dated after 2026-02-15") {
		t.Errorf("%+v, notes %q", l, c.Notes)
	}
}

// Two prices of one day, under whatever names, are a slip in the list.
func TestSameDay(t *testing.T) {
	_, problems, err := Of(formula(t, "GLY-99: 20", "Kaolin, fine white"), library.New(nil), Ask{Day: day, Prices: []levigate.Price{
		price(t, 2, "GLY-99", "10", "EUR", "1 kg", "0", "2026-01-01"), price(t, 9, "Glycerin, vegetable, 99.5 %", "11", "EUR", "1 kg", "0", "2026-01-01")}})
	if err != nil || len(problems) != 1 || problems[0].Line != 9 || !strings.Contains(problems[0].Text, "line 2 and line 9") || problems[0].Help == "" {
		t.Errorf("%v %v", err, problems)
	}
}

// An INCI name prices a raw material that is that one substance, and says so; it
// prices no blend, and its own line first.
func TestByINCI(t *testing.T) {
	c := costing(t, formula(t, "Purified water: 90", "Glycerin, 86.5 %: 5", "Glycerin"), "", "",
		price(t, 2, "aqua", "1", "EUR", "10 lb", "0", "2026-01-01"), price(t, 3, "Glycérin", "5", "EUR", "1 kg", "0", "2026-01-01"))
	if l := c.Lines[0]; l.Price == nil || len(l.Notes) != 1 || !strings.Contains(l.Notes[0], "INCI") || l.Landed.String() != "0.2205" {
		t.Errorf("%+v", l)
	}
	if c.Lines[1].Price != nil || c.Lines[2].Price == nil || len(c.Lines[2].Notes) != 0 {
		t.Errorf("%+v", c.Lines[1:])
	}
}

// A material in two lines has one price, and both lines move with it.
func TestMoverCountsBothLines(t *testing.T) {
	f := formula(t, "GLY-99: 20", "Castor oil: 30", "GLY-99: 20", "Kaolin, fine white")
	c := costing(t, f, "50", "",
		price(t, 2, "GLY-99", "10", "EUR", "1 kg", "0", "2026-01-01"), price(t, 3, "Castor oil", "10", "EUR", "1 kg", "0", "2026-01-01"), price(t, 4, "Kaolin, fine white", "1", "EUR", "1 kg", "0", "2026-01-01"))
	if fmt.Sprint(c.Mover.Lines) != "[0 2]" || c.Mover.Bulk.String() != "0.8" {
		t.Errorf("%+v", c.Mover)
	}
	free := costing(t, formula(t, "Aqua"), "", "", price(t, 2, "Aqua", "0", "EUR", "1 kg", "0", "2026-01-01"))
	if !free.Total.IsZero() || free.Mover != nil || free.Lines[0].Share != nil || free.Lines[0].Notes[0] != "the goods cost nothing" {
		t.Errorf("%+v", free)
	}
}

func TestRefuses(t *testing.T) {
	good := formula(t, "GLY-99: 20", "Kaolin, fine white")
	off := &levigate.Formula{Lines: []levigate.Line{{Name: "x", Percent: dec("98.5")}}}
	d := func(s string) *quantity.Decimal { v := dec(s); return &v }
	for name, c := range map[string]struct {
		f           *levigate.Formula
		yield, fill *quantity.Decimal
		says        string
	}{
		"no lines": {&levigate.Formula{}, nil, nil, "no lines"}, "not 100": {off, nil, nil, "98.5 %, not 100"},
		"a fraction": {good, d("0.92"), nil, "between 1 and 100"}, "more than all": {good, d("100.1"), nil, "between 1 and 100"},
		"no fill": {good, nil, d("0"), "the fill is 0 g"}, "too much fill": {good, nil, d("1000001"), "the fill is"},
	} {
		_, _, err := Of(c.f, library.New(nil), Ask{Day: day, Yield: c.yield, Fill: c.fill})
		if levigate.CodeOf(err) != levigate.Invalid || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Whatever the formula and the prices, the lines add up to the total exactly, and
// the total is what calc/cost declares, but for the rounding of its lines.
func TestLinesAddUp(t *testing.T) {
	names := []string{"GLY-99", "Castor oil", "Kaolin, fine white", "Maize starch", "Jojoba oil", "Xanthan gum, 80 mesh", "Honey, runny", "Beeswax, white", "Purified water"}
	rng := rand.New(rand.NewPCG(13, 2026))
	for range 300 {
		var lines []string
		left := int64(100_000_000)
		for _, n := range names[:len(names)-1] {
			part := rng.Int64N(left/3 + 1)
			left -= part
			lines = append(lines, fmt.Sprintf("%s: %d.%06d", n, part/1e6, part%1e6))
		}
		f := formula(t, append(lines, names[len(names)-1])...)
		var prices []levigate.Price
		for i, n := range names {
			cents := rng.Int64N(100_000)
			prices = append(prices, price(t, i+2, n, fmt.Sprintf("%d.%02d", cents/100, cents%100), "EUR",
				fmt.Sprintf("%d.%03d %s", 1+rng.Int64N(30), rng.Int64N(1000), []string{"kg", "lb", "oz"}[rng.IntN(3)]), fmt.Sprint(rng.Int64N(50)), "2026-01-01"))
		}
		yield := fmt.Sprint(1 + rng.Int64N(100))
		c := costing(t, f, yield, "50.3", prices...)
		var sum quantity.Decimal
		var percents, landed []float64
		for i := range c.Lines {
			sum = sum.Add(c.Lines[i].Cost)
			percents = append(percents, f.Lines[i].Percent.Float())
			p := &prices[i]
			landed = append(landed, cost.Landed(p.Paid.Float(), p.Freight.Float(), 0, grams(p)))
		}
		if sum.Cmp(*c.Total) != 0 {
			t.Fatalf("the lines come to %s, the total is %s", sum, c.Total)
		}
		half := 0.5e-4
		if want := cost.Formula(percents, landed); math.Abs(c.Total.Float()-want) > half*float64(len(names))*1.0001 {
			t.Fatalf("the total is %s, declared %g", c.Total, want)
		}
		if want := cost.Bulk(c.Total.Float(), dec(yield).Float()); math.Abs(c.Bulk.Float()-want) > half*1.0001 {
			t.Fatalf("bulk %s, declared %g", c.Bulk, want)
		}
		if want := cost.Fill(c.Total.Float(), dec(yield).Float(), 50.3); math.Abs(c.Unit.Float()-want) > half*1.0001 {
			t.Fatalf("unit %s, declared %g", c.Unit, want)
		}
	}
}

func grams(p *levigate.Price) float64 {
	g, _ := p.Grams.Float64()
	return g
}
