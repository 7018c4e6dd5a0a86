package weighing

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"levigate"
	"levigate/internal/library"
	"levigate/quantity"
	"levigate/refdata"
	"levigate/rules"
)

// drawn is a formula at random: phases in any order, shares of any fineness, a
// q.s. line or none, out of what the library holds.
func drawn(rng *rand.Rand, lib levigate.Library) *levigate.Formula {
	materials := refdata.Materials()
	n := 1 + rng.IntN(25)
	f := &levigate.Formula{Product: []string{"hand-cream", "shampoo"}[rng.IntN(2)]}
	left := int64(100_000_000) // millionths of a percent
	grain := []int64{1, 100, 10_000, 1_000_000}[rng.IntN(4)]
	for i := range n {
		share := left
		if i < n-1 {
			share = rng.Int64N(left/grain/int64(1+rng.IntN(n))+1) * grain
		}
		left -= share
		f.Lines = append(f.Lines, levigate.Line{Phase: string(rune('A' + rng.IntN(4))), Name: materials[rng.IntN(len(materials))].Code,
			Percent: dec(fmt.Sprintf("%d.%06d", share/1e6, share%1e6))})
	}
	if rng.IntN(2) == 0 {
		f.Lines[rng.IntN(n)].QS = true
	}
	f.Resolve(lib)
	return f
}

func drawnBalances(rng *rand.Rand) []levigate.Balance {
	var out []levigate.Balance
	for range 1 + rng.IntN(3) {
		d := []string{"0.0001", "0.001", "0.01", "0.02", "0.1", "0.5", "1", "5"}[rng.IntN(8)]
		b := levigate.Balance{Name: d, Interval: dec(d), Capacity: dec(fmt.Sprint(10 + rng.IntN(30000)))}
		if rng.IntN(2) == 0 {
			b.Repeatability = dec(d)
		}
		out = append(out, b)
	}
	return out
}

// A thousand formulas at random: every list adds up to its batch exactly, no
// line is below nothing, and the lines stand by phase.
func TestThousandListsAddUp(t *testing.T) {
	rng := rand.New(rand.NewPCG(2026, 11))
	lib := library.New(nil)
	cans, ranges := map[levigate.CanWeigh]int{}, 0
	for n := range 1000 {
		f, balances := drawn(rng, lib), drawnBalances(rng)
		batch := random(rng, []int64{1e6, 1e8, 1e9, 2e10}[rng.IntN(4)])
		tolerance := dec([]string{"0.1", "0.5", "1", "2", "5", "20", "50"}[rng.IntN(7)])
		l, err := List(f, batch, balances, tolerance)
		if err != nil {
			t.Fatal(n, err)
		}
		var sum, byPhase quantity.Decimal
		seen, absorbers := map[int]bool{}, 0
		order := map[string]int{}
		for i := range f.Lines {
			if _, ok := order[f.Lines[i].Phase]; !ok {
				order[f.Lines[i].Phase] = len(order)
			}
		}
		for i := range l.Lines {
			w := &l.Lines[i]
			cans[w.Can]++
			sum = sum.Add(w.Grams)
			seen[w.Line] = true
			if w.Absorbs {
				absorbers++
			}
			if w.Grams.Negative() || w.Shows.Negative() || w.Portion.Cmp(w.Grams) > 0 && w.Portions == 1 || w.Portions < 1 {
				t.Fatalf("list %d: %+v", n, w)
			}
			if i > 0 {
				last := &l.Lines[i-1]
				if a, b := order[last.Phase], order[w.Phase]; a > b || a == b && last.Line > w.Line {
					t.Fatalf("list %d: line %d stands before line %d", n, last.Line, w.Line)
				}
			}
			if !w.To.IsZero() {
				ranges++
				// Allowed is what the balance can show, the target among it, and
				// never further off than the tolerance.
				if w.From.Cmp(w.Shows) > 0 || w.To.Cmp(w.Shows) < 0 || w.Can == levigate.TooLittle ||
					w.From.Float() < w.Grams.Float()*(1-tolerance.Float()/100)-1e-9 || w.To.Float() > w.Grams.Float()*(1+tolerance.Float()/100)*(1+1e-12)+1e-9 {
					t.Fatalf("list %d: allowed from %s to %s: %+v", n, w.From, w.To, w)
				}
			}
			if p := w.Premix; p != nil && (w.Can != levigate.TooLittle || p.Left.Negative() || p.Uncertainty > tolerance.Float()/100) {
				t.Fatalf("list %d: %+v %+v", n, w, p)
			}
		}
		uses := rules.UsesOf(f.Product)
		for _, limit := range refdata.PreservativeLimits() {
			if !slices.ContainsFunc(limit.Use, func(u string) bool { return slices.Contains(uses, u) }) {
				continue
			}
			written, planned, heavy, byAbsorber := sums(f, &l, &limit)
			if planned <= limit.Limit && heavy > limit.Limit*(1+1e-12) && !byAbsorber {
				t.Fatalf("list %d: %s is %g %% with every line as heavy as allowed, limit %g", n, limit.Group, heavy, limit.Limit)
			}
			if written <= limit.Limit && planned > limit.Limit*(1+1e-12) && !byAbsorber {
				t.Fatalf("list %d: %s is %g %% as written and %g %% as weighed, limit %g", n, limit.Group, written, planned, limit.Limit)
			}
		}
		for _, p := range l.Phases {
			byPhase = byPhase.Add(p.Grams)
		}
		if sum.Cmp(batch) != 0 || byPhase.Cmp(batch) != 0 || len(seen) != len(f.Lines) || absorbers != 1 {
			t.Fatalf("list %d comes to %s and %s by phase, the batch is %s; %d of %d lines, %d absorb", n, sum, byPhase, batch, len(seen), len(f.Lines), absorbers)
		}
	}
	if ranges == 0 {
		t.Error("no line was allowed a range")
	}
	for _, c := range []levigate.CanWeigh{levigate.Directly, levigate.TooLittle, levigate.InPortions, levigate.Nothing} {
		if cans[c] == 0 {
			t.Errorf("no line %q was drawn", c)
		}
	}
}

// sums is what one row limits, in % as written, as weighed and as heavy as each
// line is allowed, and whether the
// line that takes up the rounding brings any of it.
func sums(f *levigate.Formula, l *levigate.WeighingList, limit *refdata.PreservativeLimit) (written, planned, heavy float64, byAbsorber bool) {
	for i := range l.Lines {
		w := &l.Lines[i]
		for _, share := range f.Lines[w.Line].Match.Material.Declared {
			for _, s := range limit.Substances {
				if s.INCI == share.INCI {
					k := share.Percent.Typical * s.Factor / 100
					written += k * w.Percent.Float()
					planned += k * 100 * w.Grams.Float() / l.Batch.Float()
					most := w.Grams
					if !w.To.IsZero() {
						most = w.To
					}
					heavy += k * 100 * most.Float() / l.Batch.Float()
					byAbsorber = byAbsorber || w.Absorbs
				}
			}
		}
	}
	return written, planned, heavy, byAbsorber
}
