package worktest

import (
	"strings"
	"testing"

	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// good is a method with nothing wrong; each bad case spoils one thing.
func good() *work.Method {
	return &work.Method{
		ID: "test.good", Title: "A share", Kind: work.Equation, Text: "a / (a + b)", Unit: quantity.One, Accuracy: "exact",
		Symbols: []work.Symbol{
			{Name: "a", Means: "one part", Unit: quantity.Gram, Min: 1, Max: 10},
			{Name: "b", Means: "the other", Unit: quantity.Gram, Min: 1, Max: 10},
		},
		Sources: []cite.Ref{{Key: "trade-practice"}},
		Checks:  []work.Check{{What: "halves", In: []float64{2, 2}, Want: 0.5, Tol: 1e-12, By: work.Law}},
		Func:    func(in []float64) float64 { return in[0] / (in[0] + in[1]) },
	}
}

func TestFaultsCatches(t *testing.T) {
	if f := Faults(good()); len(f) != 0 {
		t.Fatalf("the good method has faults: %q", f)
	}
	for want, spoil := range map[string]func(*work.Method){
		"the printed equation gives":      func(m *work.Method) { m.Text = "a / (a − b + 20)" },
		"neither a symbol nor a function": func(m *work.Method) { m.Text = "a / (a + c)" },
		"no check that our own output":    func(m *work.Method) { m.Checks[0].By = work.Pinned },
		"got 0.5, want 0.6":               func(m *work.Method) { m.Checks[0].Want = 0.6 },
		"names no source":                 func(m *work.Method) { m.Checks[0].By = work.Published },
		"not in the bibliography":         func(m *work.Method) { m.Sources[0].Key = "nobody1900" },
		"a source is needed":              func(m *work.Method) { m.Sources = nil },
		"an accuracy is needed":           func(m *work.Method) { m.Accuracy = "" },
		"says so in its title":            func(m *work.Method) { m.Own = true },
		"needs a law":                     func(m *work.Method) { m.Own, m.Title, m.Checks[0].By = true, "own rule", work.Independent },
		"a meaning, a unit and a range":   func(m *work.Method) { m.Symbols[0].Max = 0 },
		"an equation needs its function":  func(m *work.Method) { m.Func = nil; m.Checks[0].Got = func() float64 { return 0.5 } },
	} {
		m := good()
		spoil(m)
		if f := strings.Join(Faults(m), "; "); !strings.Contains(f, want) {
			t.Errorf("want a fault with %q, got %q", want, f)
		}
	}
}
