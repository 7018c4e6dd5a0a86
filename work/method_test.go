package work

import (
	"errors"
	"math"
	"strings"
	"testing"

	"levigate/quantity"
)

func TestGuard(t *testing.T) {
	m := &Method{ID: "test", Symbols: []Symbol{
		{Name: "a", Means: "one", Unit: quantity.Gram, Min: 0, Max: 1},
		{Name: "b", Means: "two", Unit: quantity.Gram, Min: 5, Max: 9},
	}}
	for _, in := range [][]float64{{0, 5}, {1, 9}, {0.5, 7}} {
		if err := m.Guard(in...); err != nil {
			t.Errorf("%v lies inside and was refused: %v", in, err)
		}
	}
	for want, in := range map[string][]float64{"a (one) is -0.1": {-0.1, 7}, "b (two) is 9.1": {1, 9.1}, "a (one) is NaN": {math.NaN(), 7}, "b (two) is +Inf": {0, math.Inf(1)}} {
		var re *RangeError
		if err := m.Guard(in...); !errors.As(err, &re) || !strings.Contains(strings.ReplaceAll(err.Error(), "\u2212", "-"), want) {
			t.Errorf("%v: got %v, want %q", in, err, want)
		}
	}
}

func TestRegisterTwiceIsASlip(t *testing.T) {
	m := Register(&Method{ID: "test.twice"})
	defer delete(methods, m.ID)
	defer func() {
		if recover() == nil {
			t.Error("a method declared twice was taken")
		}
	}()
	Register(&Method{ID: "test.twice"})
}
