package levigate

import (
	"errors"
	"math/big"
	"strings"
	"testing"
	"time"

	"levigate/quantity"
)

func TestParsePack(t *testing.T) {
	for in, want := range map[string]string{
		"5 kg": "5000", "250g": "250", "1.5 KG": "1500", "50 mg": "1/20", "1 t": "1000000",
		"10 lb": "45359237/10000", "1 oz": "28349523125/1000000000",
	} {
		w, _ := new(big.Rat).SetString(want)
		if got, err := ParsePack(in); err != nil || got.Cmp(w) != 0 {
			t.Errorf("%q: %v %v, want %s", in, got, err, want)
		}
	}
	for in, says := range map[string][2]string{
		"":          {"no pack size", "5 kg"},
		"5 L":       {"is a volume", "mass = volume × density"},
		"250 mL":    {"is a volume", "mass = volume × density"},
		"16 fl oz":  {"is a volume", "mass = volume × density"},
		"5":         {"no unit", "kg"},
		"five kg":   {"not a mass", "250 g"},
		"2 x 500 g": {"not a mass", "one mass"},
		"1 drum":    {"not a mass", "250 g"},
		"0 kg":      {"holds nothing", "bought"},
		"0.1 mg":    {"no pack", "1 mg"},
		"1.2.3 kg":  {"not a number", "one mass"},
		"9999999 t": {"no pack", "1000 t"},
	} {
		_, err := ParsePack(in)
		refuses(t, in, err, says)
	}
}

func refuses(t *testing.T, in string, err error, says [2]string) {
	t.Helper()
	e, ok := errors.AsType[*Error](err)
	if !ok || e.Code != Invalid || !strings.Contains(e.Message, says[0]) || !strings.Contains(e.Help, says[1]) {
		t.Errorf("%q: got %+v, want %q with help %q", in, err, says[0], says[1])
	}
}

func TestParseCurrency(t *testing.T) {
	if got, err := ParseCurrency(" EUR "); got != "EUR" || err != nil {
		t.Error(got, err)
	}
	for in, says := range map[string][2]string{
		"": {"no currency", "capital"}, "eur": {"no currency code", "write EUR"}, "€": {"no currency code", "write EUR"}, "$": {"no currency code", "USD"}, "EURO": {"no currency code", "capital"}, "ÄÖÜ": {"no currency code", "capital"},
	} {
		_, err := ParseCurrency(in)
		refuses(t, in, err, says)
	}
}

func TestParseDay(t *testing.T) {
	today := time.Date(2026, 3, 9, 23, 59, 0, 0, time.FixedZone("east", 7200))
	if got, err := ParseDay("2026-03-09", DayOf(today)); err != nil || got.Format(time.DateOnly) != "2026-03-09" {
		t.Error("today is no day of the future:", got, err)
	}
	for in, says := range map[string][2]string{
		"": {"no date", "year-month-day"}, "2026-03-10": {"future", "paid"}, "09/03/2026": {"not a date", "year-month-day"}, "2026-02-30": {"not a date", "year-month-day"}, "0026-03-09": {"long ago", "year"},
	} {
		_, err := ParseDay(in, DayOf(today))
		refuses(t, in, err, says)
	}
}

func TestLandedAndOld(t *testing.T) {
	dec := quantity.MustDecimal
	p := Price{Paid: dec("65.49"), Freight: dec("11.18"), Other: dec("0"), Date: time.Date(2025, 3, 9, 0, 0, 0, 0, time.UTC)}
	p.Grams, _ = ParsePack("10 lb")
	// 76.67 for 160 oz, in kilograms: exact, so compared exactly.
	want := new(big.Rat).Quo(big.NewRat(7667, 100), big.NewRat(45359237, 10000000))
	if got := p.Landed(); got.Cmp(want) != 0 {
		t.Errorf("%s, want %s", got, want)
	}
	if day := time.Date(2026, 3, 9, 0, 0, 0, 0, time.UTC); p.Old(day) || !p.Old(day.AddDate(0, 0, 1)) {
		t.Error("a price is old when more than a year has passed, not before")
	}
}
