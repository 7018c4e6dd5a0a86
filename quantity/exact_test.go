package quantity

import (
	"math/big"
	"math/rand/v2"
	"testing"
)

func TestRound(t *testing.T) {
	for in, want := range map[string]string{"1/3": "0.3333", "2/3": "0.6667", "-2/3": "-0.6667", "1/20000": "0.0001", "12.5": "12.5", "0": "0", "1e30": "1000000000000000000000000000000"} {
		r, _ := new(big.Rat).SetString(in)
		if got := Round(r, 4).String(); got != want {
			t.Errorf("%s to 4 places is %s, want %s", in, got, want)
		}
	}
	if got := Round(big.NewRat(1, 3), 30).String(); got != "0.333333" {
		t.Errorf("more places than a decimal keeps: %s", got)
	}
}

// A decimal made exact and rounded again is itself.
func TestExactComesBack(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 11))
	for range 1000 {
		r := big.NewRat(rng.Int64N(1e15), 1e6)
		d := Round(r, MaxDecimals)
		if d.Exact().Cmp(r) != 0 {
			t.Fatalf("%s came back as %s", r, d)
		}
	}
}
