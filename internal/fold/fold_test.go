package fold

import (
	"testing"
	"unicode/utf8"
)

func TestString(t *testing.T) {
	for in, want := range map[string]string{
		"":                       "",
		"  Walnut  Hand Polish ": "walnut hand polish",
		"Crème Brûlée":           "creme brulee",
		"cre\u0300me":            "creme", // the accent written apart
		"ÖL № 7":                 "ol № 7",
		"Straße, Øre":            "strasse ore",
		"99.5 %":                 "99.5%",
		"1,3-Propanediol":        "1,3-propanediol",
		"H₂O":                    "h₂o",
	} {
		if got := String(in); got != want {
			t.Errorf("String(%q) = %q, want %q", in, got, want)
		}
	}
}

// Folding what is folded changes nothing, and text stays text.
func FuzzString(f *testing.F) {
	for _, s := range []string{"", "Crème, fraîche", "ŉ", "İstanbul", "\xff\xc3", "a , b%", "µ−²"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		once := String(s)
		if twice := String(once); twice != once {
			t.Errorf("%q folds to %q and that to %q", s, once, twice)
		}
		if !utf8.ValidString(once) {
			t.Errorf("%q folds to %q, which is no text", s, once)
		}
	})
}
