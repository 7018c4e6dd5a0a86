package quantity

import (
	"math"
	"testing"
)

func TestParseIn(t *testing.T) {
	for _, c := range []struct {
		text string
		want Unit
		got  float64
	}{
		{"5kg", Gram, 5000},
		{"500 g", Gram, 500},
		{"1 oz", Gram, 28.349523125}, // NIST Handbook 44, appendix C
		{"1.26 g/mL", GramPerML, 1.26},
		{"1260 kg/m3", GramPerML, 1.26},
		{"1.26 g/cm3", GramPerML, 1.26},
		{"0.45", One, 0.45},
		{"45 %", One, 0.45},
		{"25", Celsius, 25},
		{"77 °F", Celsius, 25},
		{"298.15 K", Celsius, 25},
		{"-15 C", Celsius, -15},
		{"2 h", Minute, 120},
	} {
		got, err := ParseIn(c.text, c.want)
		if err != nil || math.Abs(got-c.got) > 1e-9 {
			t.Errorf("ParseIn(%q, %s) = %g, %v; want %g", c.text, c.want, got, err, c.got)
		}
	}
}

func TestParseInRefuses(t *testing.T) {
	for text, want := range map[string]Unit{
		"":        Gram,
		"five":    Gram,
		"5 mL":    Gram, // a volume is no mass without a density
		"5 stone": Gram,
		"NaN":     One,
		"inf":     One,
		"1e999":   One,
		"-300 °C": Celsius,
		"20 mL":   Celsius,
	} {
		if v, err := ParseIn(text, want); err == nil {
			t.Errorf("ParseIn(%q, %s) = %g, want an error", text, want, v)
		}
	}
}

func FuzzParseIn(f *testing.F) {
	f.Add("5 kg", "g")
	f.Add("77 °F", "°C")
	f.Fuzz(func(t *testing.T, text, unit string) {
		if v, err := ParseIn(text, Unit(unit)); err == nil && (math.IsNaN(v) || math.IsInf(v, 0)) {
			t.Errorf("%q in %q gave %g", text, unit, v)
		}
	})
}

func TestShownSharesDecimals(t *testing.T) {
	v, lo, hi := Shown(0.3027, 0.2769, 0.3421, One)
	if v != "0.30" || lo != "0.28" || hi != "0.34" {
		t.Errorf("activity shown as %s (%s–%s)", v, lo, hi)
	}
	if v, _, _ := Shown(-0.0004, -0.1, 0.1, GramPer100g); v != "0.0" {
		t.Errorf("a hair below zero shown as %s", v)
	}
}
