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

// As the names of raw materials are written.
func TestNamesFold(t *testing.T) {
	for in, want := range map[string]string{
		"ÀÉÎÕÜŸŁØÅČŽ":          "aeiouyloacz",
		"Œuf, straße & æther":  "oeuf strasse & aether",
		"a\u0301\u0327b":       "ab",
		"99.5 %":               "99.5%",
		" a \t b\u00a0 c ":     "a b c",
		"1,3-Propanediol":      "1,3-propanediol",
		"150–400 μm":           "150-400 um",
		"":                     "",
		",":                    "",
		"\xff":                 "\ufffd",
		"ΓΛΥΚΕΡΙΝΗ":            "γλυκερινη",
		"Grün, weiß":           "grun weiss",
		"Caprylic/Capric Trig": "caprylic/capric trig",
	} {
		if got := String(in); got != want {
			t.Errorf("String(%q) = %q, want %q", in, got, want)
		}
		if again := String(String(in)); again != String(in) {
			t.Errorf("folding %q twice gives %q", in, again)
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
