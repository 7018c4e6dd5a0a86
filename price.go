package levigate

import (
	"fmt"
	"math/big"
	"regexp"
	"slices"
	"strings"
	"time"

	"levigate/quantity"
)

// Price is what one pack of a raw material cost on one day. Amounts are in its
// currency, without any tax that its buyer gets back.
type Price struct {
	Material string // code, name or INCI name, as typed
	Paid     quantity.Decimal
	Currency string   // ISO 4217, three capital letters
	Pack     string   // as typed: "25 kg"
	Grams    *big.Rat // in the pack, exactly
	Freight  quantity.Decimal
	// FreightStated tells a freight of nothing from one that nobody wrote down.
	FreightStated bool
	Other         quantity.Decimal // duty, bank and handling fees
	Date          time.Time        // the day alone
	Supplier      string
	Notes         string
	File          string
	Place         Place
}

// Landed is what a kilogram costs once it stands on the shelf: goods, freight
// and other charges over the mass received. Exact.
func (p *Price) Landed() *big.Rat {
	sum := p.Paid.Add(p.Freight).Add(p.Other).Exact()
	return sum.Mul(sum, big.NewRat(1000, 1)).Quo(sum, p.Grams)
}

// Old reports whether more than a year has passed since the price was paid.
func (p *Price) Old(day time.Time) bool { return p.Date.AddDate(1, 0, 0).Before(day) }

// What a price may be; beyond it is a slip.
var (
	MostPaid   = quantity.MustDecimal("1000000000")
	MostLanded = quantity.MustDecimal("10000000000") // a kilogram
)

var (
	leastPack   = big.NewRat(1, 1000) // g
	largestPack = big.NewRat(1e9, 1)  // g
	packNumber  = regexp.MustCompile(`^[0-9.,]+`)
	capitals    = regexp.MustCompile(`^[A-Z]{3}$`)
)

// packUnits gives the grams in what a pack is sold by; pound and ounce exactly,
// as defined (NIST Handbook 44, appendix C).
var packUnits = map[string]*big.Rat{
	"t": big.NewRat(1e6, 1), "kg": big.NewRat(1000, 1), "g": big.NewRat(1, 1), "mg": big.NewRat(1, 1000),
	"lb": big.NewRat(45359237, 1e5), "oz": big.NewRat(28349523125, 1e9),
}

// volumes are the units of what is sold by volume, in small letters.
var volumes = []string{"ml", "cl", "dl", "l", "litre", "litres", "liter", "liters", "fl oz", "fl. oz", "floz", "gal", "gallon", "m3", "m³"}

// ParsePack reads the mass in a pack, with its unit, as exact grams. A volume is
// refused: what is weighed is paid by weight.
func ParsePack(text string) (*big.Rat, error) {
	text = strings.TrimSpace(text)
	number := packNumber.FindString(text)
	unit := strings.TrimSpace(text[len(number):])
	size, known := packUnits[unit]
	if !known {
		size, known = packUnits[strings.ToLower(unit)]
	}
	switch {
	case text == "":
		return nil, refusedPrice("no pack size is written", "write the mass in the pack with its unit, like 5 kg")
	case slices.Contains(volumes, strings.ToLower(unit)):
		return nil, refusedPrice(fmt.Sprintf("%q is a volume", text), "write the mass, or mass = volume × density from the supplier's sheet")
	case number != "" && unit == "":
		return nil, refusedPrice(fmt.Sprintf("%q has no unit", text), "write g, kg, oz or lb behind it")
	case !known || number == "":
		return nil, refusedPrice(fmt.Sprintf("%q is not a mass", text), "write one mass with its unit, like 250 g, 5 kg or 10 lb")
	}
	d, err := quantity.ParseDecimal(number)
	if err != nil {
		return nil, refusedPrice(err.Error(), "write one mass with its unit, like 250 g, 5 kg or 10 lb")
	}
	grams := d.Exact()
	switch grams.Mul(grams, size); {
	case grams.Sign() == 0:
		return nil, refusedPrice("the pack holds nothing", "write the mass that was bought")
	case grams.Cmp(leastPack) < 0 || grams.Cmp(largestPack) > 0:
		return nil, refusedPrice(fmt.Sprintf("%q is no pack of a raw material", text), "write a mass from 1 mg to 1000 t")
	}
	return grams, nil
}

// signs are the currency signs that mean one currency only.
var signs = map[string]string{"€": "EUR", "£": "GBP", "₹": "INR", "₺": "TRY", "₴": "UAH", "₪": "ILS", "₩": "KRW", "zł": "PLN", "kč": "CZK", "ft": "HUF"}

// ParseCurrency reads a currency's code.
func ParseCurrency(text string) (string, error) {
	text = strings.TrimSpace(text)
	help := "write the three capital letters of the currency, like EUR, GBP or USD"
	code := strings.ToUpper(text)
	if sign := signs[strings.ToLower(text)]; sign != "" {
		code = sign
	}
	switch {
	case text == "":
		return "", refusedPrice("no currency is written", help)
	case capitals.MatchString(text):
		return text, nil
	case capitals.MatchString(code):
		help = "write " + code
	}
	return "", refusedPrice(fmt.Sprintf("%q is no currency code", text), help)
}

// ParseDay reads a day as year-month-day, the one order that is read alike
// everywhere. A day after today is refused.
func ParseDay(text string, today time.Time) (time.Time, error) {
	text = strings.TrimSpace(text)
	const help = "write year-month-day, like 2026-03-09"
	day, err := time.Parse(time.DateOnly, text)
	switch {
	case text == "":
		return day, refusedPrice("no date is written", help)
	case err != nil:
		return day, refusedPrice(fmt.Sprintf("%q is not a date", text), help)
	case day.Year() < 1970:
		return day, refusedPrice(text+" is long ago", "see whether the year is right")
	case day.After(today):
		return day, refusedPrice(text+" lies in the future", "write the day on which it was paid or offered")
	}
	return day, nil
}

// DayOf is the day of a moment where the program runs, as ParseDay gives days.
func DayOf(t time.Time) time.Time {
	y, m, d := t.Date()
	return time.Date(y, m, d, 0, 0, 0, 0, time.UTC)
}

func refusedPrice(what, help string) error {
	return &Error{Code: Invalid, Message: what, Help: help}
}
