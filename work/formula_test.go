package work

import (
	"math"
	"testing"
)

func TestEvaluate(t *testing.T) {
	v := map[string]float64{"x": 2, "a_w": 0.5, "φ": 3, "Mw": 18}
	for text, want := range map[string]float64{
		"1 + 2 × 3":                7,
		"(1 + 2) × 3":              9,
		"−x^2":                     -4, // a power binds tighter than a sign
		"2^−1":                     0.5,
		"2^3^2":                    512, // to the right, as written mathematics does
		"8 / 4 / 2":                1,
		"exp(ln(φ)) × a_w":         1.5,
		"max(1, x, φ) − min(x, 1)": 2,
		"1e-3 × 1000":              1,
		"sqrt(Mw / 2)":             3,
		"log10(100)":               2,
	} {
		got, err := Evaluate(text, v)
		if err != nil || math.Abs(got-want) > 1e-12 {
			t.Errorf("%s = %g, %v; want %g", text, got, err, want)
		}
	}
	for _, text := range []string{"", "1 +", "(1", "y", "sin(1)", "exp(1, 2)", "1 2", "max(1)", "exp 1", "$"} {
		if got, err := Evaluate(text, v); err == nil {
			t.Errorf("%q was read as %g", text, got)
		}
	}
}

func TestSubstitute(t *testing.T) {
	got := Substitute("a + exp(ab) − a^2", map[string]string{"a": "3", "ab": "-1"})
	if want := "3 + exp((-1)) − 3^2"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

func FuzzEvaluate(f *testing.F) {
	f.Add("1 + x")
	f.Add("((((")
	f.Add("−−−1e-")
	f.Fuzz(func(_ *testing.T, text string) {
		if len(text) < 1000 {
			_, _ = Evaluate(text, map[string]float64{"x": 1}) // must not panic
		}
	})
}
