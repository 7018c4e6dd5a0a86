package levigate

import (
	"strings"
	"testing"

	"levigate/quantity"
)

func TestParseBalance(t *testing.T) {
	for text, want := range map[string]Balance{
		"0.01 g,2000 g,s=0.01 g":            {"0.01 g to 2000 g", quantity.MustDecimal("0.01"), quantity.MustDecimal("0.01"), quantity.MustDecimal("2000"), quantity.Decimal{}},
		"0.1mg, 0.22 kg":                    {"0.0001 g to 220 g", quantity.MustDecimal("0.0001"), quantity.Decimal{}, quantity.MustDecimal("220"), quantity.Decimal{}},
		"1 g,6 kg,tare=800 g,name=Kitchen ": {"Kitchen", quantity.MustDecimal("1"), quantity.Decimal{}, quantity.MustDecimal("6000"), quantity.MustDecimal("800")},
	} {
		got, err := ParseBalance(text)
		if err != nil || got.Name != want.Name || got.Interval.Cmp(want.Interval) != 0 || got.Repeatability.Cmp(want.Repeatability) != 0 ||
			got.Capacity.Cmp(want.Capacity) != 0 || got.Tare.Cmp(want.Tare) != 0 {
			t.Errorf("%q: %+v, %v", text, got, err)
		}
	}
}

func TestParseBalanceRefuses(t *testing.T) {
	for text, says := range map[string]string{
		"":                            "names no capacity",
		"0.01 g":                      "names no capacity",
		"0.01,2000":                   "has no unit",
		"0,01 g,2000 g":               `"0" has no unit`,
		"0.01 g,2 L":                  "not a mass",
		"-1 g,2 kg":                   "is negative",
		"0.01 g,2 kg,s":               "may stand once each",
		"0.01 g,2 kg,s=1 g,s=1 g":     "may stand once each",
		"0.01 g,2 kg,max=1 g":         `key "max" that is not known`,
		"0.01 g,2 kg,interval=1 g":    "may stand once each",
		"0 g,2 kg":                    "steps of nothing",
		"1 g,0.001 kg":                "no room",
		"1 g,100 g,tare=99.5 g":       "no room",
		"1 g,100 g,name=":             "can't be printed",
		"0.0000001 g,1 g":             "decimals",
		"0.01 g,999999999999999999 g": "too large",
	} {
		_, err := ParseBalance(text)
		if CodeOf(err) != Invalid || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v", text, err)
		}
	}
}

func TestParseGrams(t *testing.T) {
	for text, want := range map[string]string{"500g": "500", "5 kg": "5000", "0.5kg": "500", "1.2345 kg": "1234.5", "12 mg": "0.012", "1250.5 mg": "1.2505", "007 g": "7", "0 g": "0"} {
		if got, err := ParseGrams(text); err != nil || got.String() != want {
			t.Errorf("%q: %s, %v; want %s", text, got, err, want)
		}
	}
}

// Whatever is typed: a balance comes out that can weigh, or an error with help.
func FuzzParseBalance(f *testing.F) {
	for _, s := range []string{"0.01 g,2000 g,s=0.01 g", "0.1mg,220g", "1 g,6 kg,tare=0.8 kg,name=Jug", "=,=", ",,,,", "1g,1g", "٣ g,2 g"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		b, err := ParseBalance(text)
		if err != nil {
			if e, ok := err.(*Error); !ok || e.Help == "" {
				t.Errorf("%q: no help with %v", text, err)
			}
			return
		}
		room := b.Room()
		if b.Name == "" || b.Interval.IsZero() || b.Interval.Negative() || b.Repeatability.Negative() || b.Tare.Negative() || room.Cmp(b.Interval) <= 0 {
			t.Errorf("%q was read as %+v", text, b)
		}
	})
}
