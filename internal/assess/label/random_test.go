package label_test

import (
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"levigate"
	"levigate/internal/assess"
	"levigate/quantity"
	"levigate/refdata"
)

// shelf is what the random formulas are made of: every embedded raw material,
// and some of a maker's own with ranges, colourants and names nobody knows.
func shelf() []*levigate.Material {
	own := func(name string, shares ...any) *levigate.Material {
		m := &levigate.Material{Name: name, Origin: levigate.OfFormula}
		for i := 0; i < len(shares); i += 4 {
			inci := shares[i].(string)
			s, _ := refdata.Substance(inci)
			m.Declared = append(m.Declared, levigate.Share{INCI: inci, Substance: s,
				Percent: levigate.Range{Typical: shares[i+1].(float64), Low: shares[i+2].(float64), High: shares[i+3].(float64)}})
		}
		return m
	}
	return append(slices.Clone(refdata.Materials()),
		own("Blend in ranges", "Cetearyl Alcohol", 60.0, 40.0, 80.0, "Ceteareth-20", 40.0, 20.0, 60.0),
		own("Serum base", "Aqua", 55.0, 40.0, 70.0, "Glycerin", 40.0, 30.0, 50.0, "Panthenol", 5.0, 0.0, 10.0),
		own("Pigments", "CI 77491", 50.0, 45.0, 55.0, "CI 77492", 30.0, 25.0, 35.0, "CI 77891", 20.0, 15.0, 25.0),
		own("Hedge extract", "Crataegus Monogyna Fruit Extract", 5.0, 1.0, 9.0, "Aqua", 95.0, 91.0, 99.0),
		own("Two oranges", "Citrus Aurantium Amara Peel Oil", 50.0, 50.0, 50.0, "Citrus Aurantium Dulcis Peel Oil", 50.0, 50.0, 50.0),
	)
}

func randomFormula(r *rand.Rand, shelf []*levigate.Material) *levigate.Formula {
	f := &levigate.Formula{Code: "R", Markets: slices.Clone(levigate.Markets)}
	// Round shares make ties and places at exactly 1 %.
	round := []string{"0", "0.1", "0.5", "1", "1.00", "2", "2.5", "5", "8"}
	for range 1 + r.IntN(25) {
		m := shelf[r.IntN(len(shelf))]
		percent := round[r.IntN(len(round))]
		if r.IntN(3) == 0 {
			percent = strconv.FormatFloat(float64(r.IntN(120000))/1e4, 'f', 4, 64)
		}
		f.Lines = append(f.Lines, levigate.Line{Name: m.Name, Percent: quantity.MustDecimal(percent), Match: levigate.Match{Material: m}})
	}
	return f
}

// masses is the list's arithmetic a second way: exact fractions, from the lines.
type masses map[string]*[3]big.Rat // INCI to typical, low, high

func massesOf(f *levigate.Formula) masses {
	out := masses{}
	for _, l := range f.Lines {
		percent, _ := new(big.Rat).SetString(l.Percent.String())
		for _, s := range l.Match.Material.Declared {
			if out[s.INCI] == nil {
				out[s.INCI] = &[3]big.Rat{}
			}
			for i, v := range []float64{s.Percent.Typical, s.Percent.Low, s.Percent.High} {
				share, _ := new(big.Rat).SetString(strconv.FormatFloat(v, 'f', -1, 64))
				share.Mul(share, percent).Quo(share, big.NewRat(100, 1))
				out[s.INCI][i].Add(&out[s.INCI][i], share)
			}
		}
	}
	for inci, m := range out {
		if m[2].Sign() == 0 {
			delete(out, inci)
		}
	}
	return out
}

func TestThousandRandomLists(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	all := shelf()
	seen := map[string]int{}
	for n := range 1000 {
		f := randomFormula(r, all)
		a := assess.Check(assess.Request{Formula: f, Parts: []string{"label"}})
		for _, market := range levigate.Markets {
			for _, fault := range faults(a.Ingredients.Of(market), massesOf(f), market, seen) {
				t.Errorf("formula %d, %s: %s", n, market, fault)
			}
		}
		if t.Failed() {
			return
		}
	}
	for _, what := range []string{"tie", "uncertain", "free", "colourant", "open", "shared"} {
		if seen[what] < 10 {
			t.Errorf("only %d places show %q: the test has become empty", seen[what], what)
		}
	}
}

// faults holds one list against the masses.
func faults(list levigate.Ingredients, want masses, market string, seen map[string]int) []string {
	var out []string
	say := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	sums := make([][3]big.Rat, len(list))
	taken := map[string]bool{}
	names := map[string]bool{}
	for i, in := range list {
		for _, inci := range in.INCI {
			m := want[inci]
			if m == nil || taken[inci] {
				say("%s is not declared, or stands twice", inci)
				continue
			}
			taken[inci] = true
			for k := range m {
				sums[i][k].Add(&sums[i][k], &m[k])
			}
		}
		if in.Name != "" && names[in.Name] {
			say("%s stands twice", in.Name)
		}
		names[in.Name] = true
		for k, v := range []float64{in.Percent.Typical, in.Percent.Low, in.Percent.High} {
			if w, _ := sums[i][k].Float64(); math.Abs(w-v) > 1e-9 {
				say("%v has %g %%, want %g", in.INCI, v, w)
			}
		}
		if market == "us" && slices.Contains(in.INCI, in.Name) && refdata.Latin(in.Name) {
			say("%s is Latin", in.Name)
		}
	}
	if len(taken) != len(want) {
		say("%d of %d substances are listed", len(taken), len(want))
	}
	for i := range list {
		orderFaults(list, sums, i, say)
		tally(&list[i], seen)
	}
	return out
}

// orderFaults holds one place against all others, pair by pair.
func orderFaults(list levigate.Ingredients, sums [][3]big.Rat, i int, say func(string, ...any)) {
	in := &list[i]
	// Nearly all of them are numbers; caramel goes by its name.
	colour := !slices.ContainsFunc(in.INCI, func(s string) bool { return !strings.HasPrefix(s, "CI ") && s != "Caramel" })
	if in.Colourant != colour || in.Below1 != free(in.Market, &sums[i][0]) {
		say("%v: colourant %v, free %v", in.INCI, in.Colourant, in.Below1)
	}
	doubt := false
	for j := range list {
		later, other := j > i, &list[j]
		if later && (in.Colourant && !other.Colourant || in.Below1 && !other.Below1 && !other.Colourant) {
			say("%v stands before %v", in.INCI, other.INCI)
		}
		if later && in.Colourant == other.Colourant && in.Below1 == other.Below1 && sums[i][0].Cmp(&sums[j][0]) < 0 {
			say("%v has less than %v behind it", in.INCI, other.INCI)
		}
		a, b := i, j // b behind a: may b have more, and enough for its order to count?
		if !later {
			a, b = j, i
		}
		if i != j && !in.Colourant && !other.Colourant && sums[b][2].Cmp(&sums[a][1]) > 0 && !free(in.Market, &sums[b][2]) {
			doubt = true
		}
	}
	doubt = doubt || !in.Colourant && free(in.Market, &sums[i][0]) && !free(in.Market, &sums[i][2])
	if in.Uncertain != doubt {
		say("%v: uncertain %v, pair by pair %v", in.INCI, in.Uncertain, doubt)
	}
	alike := i > 0 && sums[i-1][0].Cmp(&sums[i][0]) == 0 && list[i-1].Colourant == in.Colourant
	if in.Tie != alike {
		say("%v: tie %v, want %v", in.INCI, in.Tie, alike)
	}
}

func free(market string, percent *big.Rat) bool {
	c := percent.Cmp(big.NewRat(1, 1))
	return c < 0 || c == 0 && market == "us"
}

func tally(in *levigate.Ingredient, seen map[string]int) {
	for what, yes := range map[string]bool{"tie": in.Tie, "uncertain": in.Uncertain, "free": in.Below1, "colourant": in.Colourant,
		"open": in.Name == "", "shared": len(in.INCI) > 1} {
		if yes {
			seen[what]++
		}
	}
}
