package weighing

import (
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"

	"levigate"
	"levigate/calc/weighing"
	"levigate/formulafile"
	"levigate/internal/library"
	"levigate/quantity"
)

var dec = quantity.MustDecimal

func balance(t *testing.T, text string) levigate.Balance {
	t.Helper()
	b, err := levigate.ParseBalance(text)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func example(t *testing.T, code string) *levigate.Formula {
	t.Helper()
	f, problems, err := formulafile.ReadFile("../../../examples/" + code + ".formula.yaml")
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	if problems := f.Resolve(library.New(nil)); len(problems) > 0 {
		t.Fatal(problems)
	}
	return f
}

func list(t *testing.T, f *levigate.Formula, batch, tolerance string, balances ...string) levigate.WeighingList {
	t.Helper()
	var bs []levigate.Balance
	for _, b := range balances {
		bs = append(bs, balance(t, b))
	}
	l, err := List(f, dec(batch), bs, dec(tolerance))
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// simple is a formula of one phase, its last line q.s.
func simple(percents ...string) *levigate.Formula {
	f := &levigate.Formula{}
	for i, p := range percents {
		f.Lines = append(f.Lines, levigate.Line{Phase: "A", Name: fmt.Sprint("raw material ", i+1), Percent: dec(p)})
	}
	f.Lines = append(f.Lines, levigate.Line{Phase: "A", Name: "fill up", QS: true})
	f.FillUp()
	return f
}

func gramsOf(l levigate.WeighingList) string {
	var out []string
	for i := range l.Lines {
		out = append(out, l.Lines[i].Grams.Fixed(2))
	}
	return strings.Join(out, " ")
}

// The grams that a person worked out for the walnut polish.
func TestWalnutPolish(t *testing.T) {
	const bench = "0.01 g,2000 g,s=0.01 g"
	f := example(t, "HP-01")
	l := list(t, f, "500", "2", bench)
	if got, want := gramsOf(l), "105.00 10.00 15.00 237.50 40.00 1.50 40.00 15.00 35.00 1.00"; got != want {
		t.Errorf("got %s\nwant %s", got, want)
	}
	for i, want := range []string{"130", "334", "36"} {
		if p := l.Phases[i]; p.Grams.String() != want {
			t.Errorf("phase %s is %s g, want %s", p.Phase, p.Grams, want)
		}
	}
	for tolerance, want := range map[string]int{"2": 0, "1": 2} {
		little := 0
		for _, w := range list(t, f, "500", tolerance, bench).Lines {
			if w.Can == levigate.TooLittle {
				little++
			}
		}
		if little != want {
			t.Errorf("at %s %% %d lines are too little, want %d", tolerance, little, want)
		}
	}
	l = list(t, f, "100", "2", bench)
	for line, want := range map[int][2]string{5: {"0.30", "333.34"}, 9: {"0.20", "500.00"}} {
		w := l.Lines[line]
		if w.Can != levigate.TooLittle || w.Grams.Fixed(2) != want[0] || w.Minimum.Fixed(2) != "1.00" || w.SmallestBatch.Fixed(2) != want[1] {
			t.Errorf("line %d: %+v", line+1, w)
		}
	}
}

// Every pre-mix proposed delivers what is wanted, keeps the tolerance and the
// minimum weight, and takes no more of its host than there is.
func TestPremixDelivers(t *testing.T) {
	n := 0
	for _, code := range []string{"HP-01", "CM-03", "BL-02", "CB-01", "NG-09"} {
		for _, batch := range []string{"30", "50", "100", "250"} {
			l := list(t, example(t, code), batch, "2", "0.01 g,2000 g,s=0.01 g")
			for _, w := range l.Lines {
				p := w.Premix
				if p == nil {
					continue
				}
				n++
				a, v, take := p.Active.Float(), p.Diluent.Float(), p.Take.Float()
				wanted := dec(batch).Float() * w.Percent.Float() / 100
				if got := take * a / (a + v); math.Abs(got-wanted) > 0.005*wanted {
					t.Errorf("%s %s g: %s delivers %g g of %g", code, batch, w.Name, got, wanted)
				}
				if p.Uncertainty > 0.02 || a < 1 || take < 1 || a+v < take || p.Left.Negative() {
					t.Errorf("%s %s g: %s in %s: %+v", code, batch, w.Name, p.Name, p)
				}
			}
		}
	}
	if n < 10 {
		t.Errorf("only %d pre-mixes were proposed", n)
	}
}

func TestHosts(t *testing.T) {
	l := list(t, example(t, "HP-01"), "100", "2", "0.01 g,2000 g,s=0.01 g")
	for _, line := range []int{5, 9} {
		if p := l.Lines[line].Premix; p == nil || !strings.HasPrefix(p.Name, "Sunflower oil") || !p.Dissolves || p.Watery {
			t.Errorf("line %d goes into %+v", line+1, p)
		}
	}
	first, second := l.Lines[5].Premix, l.Lines[9].Premix
	if first.Left.Cmp(second.Left) <= 0 {
		t.Errorf("the second pre-mix leaves %s g of the oil, the first %s", second.Left, first.Left)
	}
	// A salt goes into the water of its phase, and that mix is used the same day.
	l = list(t, example(t, "BL-02"), "100", "2", "0.01 g,2000 g,s=0.01 g")
	if p := l.Lines[3].Premix; p == nil || p.Name != "Purified water" || !p.Watery {
		t.Errorf("sodium benzoate goes into %+v", p)
	}
	if p := l.Lines[2].Premix; p != nil {
		t.Errorf("a gum does not divide evenly in a liquid, and goes into %s", p.Name)
	}
}

// The worked cases of a weighing practice: rounding half upwards, the water
// takes up the rest, and lines under 2.00 g are too little for 1 %.
func TestEightLines(t *testing.T) {
	f := simple("3.0", "4.5", "8.0", "1.0", "0.2", "0.3", "0.15")
	const bench = "0.01 g,2000 g,s=0.01 g"
	l := list(t, f, "850", "1", bench)
	if l.Lines[4].Can != levigate.TooLittle || l.Lines[6].Can != levigate.TooLittle || l.Lines[5].Can != levigate.Directly {
		t.Errorf("at 1 %%: %+v", l.Lines)
	}
	l = list(t, f, "850", "2", bench)
	if got, want := gramsOf(l), "25.50 38.25 68.00 8.50 1.70 2.55 1.28 704.22"; got != want {
		t.Errorf("at 2 %%: got %s, want %s", got, want)
	}
	if !l.Lines[7].Absorbs || l.Absorbed.String() != "-0.005" {
		t.Errorf("the water absorbs %s", l.Absorbed)
	}
}

func TestFinerBalanceIsTaken(t *testing.T) {
	f := simple("0.05")
	l := list(t, f, "500", "1", "0.01 g,2000 g,s=0.01 g", "0.001 g,300 g,s=0.001 g")
	if w := l.Lines[0]; w.Balance != 1 || w.Can != levigate.Directly || math.Abs(w.Uncertainty-0.008) > 1e-12 || w.Minimum.String() != "0.2" {
		t.Errorf("%+v", w)
	}
	if w := l.Lines[1]; w.Balance != 0 {
		t.Errorf("499.75 g do not go on a balance of 300 g: %+v", w)
	}
	l = list(t, f, "500", "1", "0.01 g,2000 g,s=0.01 g")
	if w := l.Lines[0]; w.Can != levigate.TooLittle || math.Abs(w.Uncertainty-0.08) > 1e-12 || w.SmallestBatch.String() != "4000" {
		t.Errorf("%+v", w)
	}
}

// 12 kg of water, a 6 kg scale, a jug of 0.8 kg: three times 4 kg.
func TestPortions(t *testing.T) {
	l := list(t, simple("20"), "15000", "2", "1 g,6 kg,s=1 g,tare=0.8 kg")
	if w := l.Lines[1]; w.Can != levigate.InPortions || w.Portions != 3 || w.Portion.String() != "4000" {
		t.Errorf("%+v", w)
	}
}

// A line is never written up to a minimum weight it has not got.
func TestJustTooLittle(t *testing.T) {
	l := list(t, simple("0.2"), "499", "2", "0.01 g,2000 g,s=0.01 g")
	if w := l.Lines[0]; w.Can != levigate.TooLittle || w.Grams.String() != "0.998" {
		t.Errorf("%+v", w)
	}
}

// Rounding never carries a preservative over a limit that the formula keeps.
func TestLimitIsKept(t *testing.T) {
	lib := library.New(nil)
	f := &levigate.Formula{Product: "hand-cream", Lines: []levigate.Line{
		{Phase: "A", Name: "Purified water", QS: true},
		{Phase: "A", Name: "Phenoxyethanol", Percent: dec("1.0")},
	}}
	f.FillUp()
	if problems := f.Resolve(lib); len(problems) > 0 {
		t.Fatal(problems)
	}
	l := list(t, f, "100.7", "2", "0.01 g,2000 g,s=0.001 g")
	w := l.Lines[1]
	// 1.007 g would be shown as 1.01 g, which is 1.003 %.
	if w.Grams.String() != "1" || len(w.Notes) != 2 || !strings.Contains(w.Notes[0], "rounded down") || !strings.Contains(w.Notes[1], "plan at most 0.98 %") {
		t.Errorf("%s g, %q", w.Grams, w.Notes)
	}
	if sum := l.Lines[0].Grams.Add(w.Grams); sum.String() != "100.7" {
		t.Errorf("the list comes to %s", sum)
	}
	// A limit of 1.0 % with 1 % of tolerance: at most 0.990 %.
	if w := list(t, f, "1000", "1", "0.01 g,2000 g").Lines[1]; len(w.Notes) != 1 || !strings.Contains(w.Notes[0], "plan at most 0.99 %") {
		t.Errorf("%q", w.Notes)
	}
	f.Markets = []string{"us"}
	if w := list(t, f, "100.7", "2", "0.01 g,2000 g,s=0.001 g").Lines[1]; w.Grams.String() != "1.01" || len(w.Notes) > 0 {
		t.Errorf("the rows are of the EU: %s g, %q", w.Grams, w.Notes)
	}
}

// A pre-mix brings no more of a limited substance than the formula, though its
// three weighings are rounded; and a line rounded down for a limit is written
// finely enough to stay within the tolerance.
func TestPremixKeepsTheLimit(t *testing.T) {
	lib := library.New(nil)
	f := &levigate.Formula{Product: "body-lotion", Lines: []levigate.Line{
		{Phase: "A", Name: "Aqua", QS: true},
		{Phase: "A", Name: "Phenoxyethanol", Percent: dec("1.0")},
	}}
	f.FillUp()
	if problems := f.Resolve(lib); len(problems) > 0 {
		t.Fatal(problems)
	}
	mixes := 0
	for batch := 2000; batch < 9000; batch += 37 {
		l := list(t, f, fmt.Sprintf("%d.%02d", batch/100, batch%100), "2", "0.01 g,2000 g,s=0.01 g")
		w, whole := l.Lines[1], l.Batch.Exact()
		if g := new(big.Rat).Quo(w.Grams.Exact(), whole); g.Cmp(big.NewRat(1, 100)) > 0 || g.Cmp(big.NewRat(98, 10000)) < 0 {
			t.Errorf("batch %s: %s g", l.Batch, w.Grams)
		}
		if p := w.Premix; p != nil {
			mixes++
			got := times(p.Active.Exact(), p.Take.Exact())
			got.Quo(got, p.Active.Add(p.Diluent).Exact()).Quo(got, whole)
			if got.Cmp(big.NewRat(1, 100)) > 0 {
				t.Errorf("batch %s: %s g of %s + %s g bring %s of the batch", l.Batch, p.Take, p.Active, p.Diluent, got.FloatString(6))
			}
		}
	}
	if mixes < 50 {
		t.Errorf("only %d pre-mixes: the test has become empty", mixes)
	}
}

// 0.50 % of benzoic acid is the limit of what is left on, not of a shampoo.
func TestLimitOfTheUse(t *testing.T) {
	lib := library.New(nil)
	for product, want := range map[string]int{"shampoo": 0, "body-lotion": 1, "make-up-remover": 1} {
		f := &levigate.Formula{Product: product, Lines: []levigate.Line{
			{Phase: "A", Name: "Aqua", QS: true},
			{Phase: "A", Name: "Sodium Benzoate", Percent: dec("0.585")},
		}}
		f.FillUp()
		if problems := f.Resolve(lib); len(problems) > 0 {
			t.Fatal(problems)
		}
		if w := list(t, f, "1000", "2", "0.01 g,2000 g,s=0.01 g").Lines[1]; len(w.Notes) != want {
			t.Errorf("%s: %q", product, w.Notes)
		}
	}
}

// What no batch brings onto the balances, and what is less than the last place
// kept, is said, with what to do.
func TestHopelessLinesAreSaid(t *testing.T) {
	l := list(t, simple("20"), "500", "2", "1 kg,6 kg")
	if said := l.Advice(0); !strings.Contains(said, "take a finer one") || strings.Contains(said, "No other line") {
		t.Error(said)
	}
	l = list(t, simple("0.000001"), "1", "2", "0.01 g,2000 g,s=0.01 g")
	if said := l.Advice(0); !strings.Contains(said, "is not in the sums") {
		t.Error(said)
	}
}

func TestListRefuses(t *testing.T) {
	good := simple("20")
	off := &levigate.Formula{Lines: []levigate.Line{{Phase: "A", Name: "x", Percent: dec("98.5")}}}
	bench := []levigate.Balance{balance(t, "0.01 g,2000 g")}
	for name, c := range map[string]struct {
		f                *levigate.Formula
		batch, tolerance string
		balances         []levigate.Balance
		says             string
	}{
		"not 100":       {off, "100", "2", bench, "98.5 %, not 100"},
		"no lines":      {&levigate.Formula{}, "100", "2", bench, "no lines"},
		"no batch":      {good, "0", "2", bench, "the batch is 0 g"},
		"no balance":    {good, "100", "2", nil, "no balance"},
		"no tolerance":  {good, "100", "0", bench, "tolerance is 0 %"},
		"too loose":     {good, "100", "51", bench, "tolerance is 51 %"},
		"empty balance": {good, "100", "2", []levigate.Balance{{Name: "x"}}, "can weigh nothing"},
	} {
		_, err := List(c.f, dec(c.batch), c.balances, dec(c.tolerance))
		if levigate.CodeOf(err) != levigate.Invalid || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// The exact minimum weight is the one that calc/weighing declares.
func TestMinimumIsTheDeclaredOne(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	for range 1000 {
		b := levigate.Balance{Interval: random(rng, 5000), Repeatability: random(rng, 5000), Capacity: dec("1000")}
		tolerance := random(rng, 50_000_000)
		got, _ := scaleOf(&b, 0, tolerance.Exact()).minimum.Float64()
		want := weighing.Minimum(b.Interval.Float(), b.Repeatability.Float(), tolerance.Float())
		if math.Abs(got-want) > 1e-12*want {
			t.Fatalf("%+v at %s %%: %g, declared %g", b, tolerance, got, want)
		}
	}
}

// random is a decimal above zero in millionths.
func random(rng *rand.Rand, millionths int64) quantity.Decimal {
	n := 1 + rng.Int64N(millionths)
	return dec(fmt.Sprintf("%d.%06d", n/1e6, n%1e6))
}
