package quantity

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestParseDecimalRefusesWithAdvice(t *testing.T) {
	for in, want := range map[string]string{
		"":                    "a number is missing",
		"-1":                  "-1 is negative; write zero or more",
		"+1":                  "+1 carries a sign; write the digits alone",
		"12,5":                "12,5 has a comma; write a point: 12.5",
		"1e3":                 `"1e3" is not a number; write digits, with a point if needed, like 12.5`,
		".5":                  `".5" is not a number; write digits, with a point if needed, like 12.5`,
		"5.":                  `"5." is not a number; write digits, with a point if needed, like 12.5`,
		"NaN":                 `"NaN" is not a number; write digits, with a point if needed, like 12.5`,
		"1.2345678":           "1.2345678 has 7 decimals; at most 6 are kept",
		"9999999999999999999": "9999999999999999999 is too large",
	} {
		if _, err := ParseDecimal(in); err == nil || err.Error() != want {
			t.Errorf("ParseDecimal(%q): got %v, want %s", in, err, want)
		}
	}
}

// A total that floating numbers miss by a hair is exact here.
func TestDecimalAddsExactly(t *testing.T) {
	var sum Decimal
	for range 1000 {
		sum = sum.Add(MustDecimal("0.1"))
	}
	if sum.Cmp(Hundred) != 0 {
		t.Errorf("a thousand tenths come to %s", sum)
	}
}

func TestDecimalWritesWhatItReads(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringMatching(`(0|[1-9][0-9]{0,8})(\.[0-9]{0,5}[1-9])?`).Draw(t, "number")
		d, err := ParseDecimal(s)
		if err != nil {
			t.Fatal(err)
		}
		if d.String() != s {
			t.Fatalf("%s came back as %s", s, d)
		}
		if whole, frac, _ := strings.Cut(d.Fixed(2), "."); len(frac) < 2 || whole == "" {
			t.Fatalf("Fixed(2) of %s is %s", s, d.Fixed(2))
		}
	})
}

func FuzzParseDecimal(f *testing.F) {
	for _, s := range []string{"1", "0.000001", "100", "1e9", "-0", "٣", "1_000"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if d, err := ParseDecimal(s); err == nil && (d.Negative() || d.Float() < 0) {
			t.Errorf("%q was read as %s", s, d)
		}
	})
}

func TestDecimalThroughJSON(t *testing.T) {
	for _, s := range []string{"0", "12.5", "0.000001", "999999999999", "-3.5"} {
		var d Decimal
		if err := d.UnmarshalJSON([]byte(s)); err != nil || d.String() != s {
			t.Errorf("%s reads as %s, %v", s, d, err)
		}
	}
	for _, s := range []string{`"12"`, "1e400", "null", "", "{}"} {
		var d Decimal
		if err := d.UnmarshalJSON([]byte(s)); err == nil {
			t.Errorf("%s was read as %s", s, d)
		}
	}
}
