package levigate

import (
	"fmt"
	"strings"

	"levigate/quantity"
)

// Balance is one balance on the bench. All masses are grams.
type Balance struct {
	Name     string
	Interval quantity.Decimal // d, the smallest step it shows
	// Repeatability is s, the standard deviation of ten weighings of one weight.
	// Zero when not stated: then only rounding counts, 0.41 of an interval, which
	// flatters the balance.
	Repeatability quantity.Decimal
	Capacity      quantity.Decimal // the most it carries, vessel included
	Tare          quantity.Decimal // the vessel that usually stands on it; zero for a light one
}

// Room is the most that can be weighed in at once, vessel on.
func (b *Balance) Room() quantity.Decimal { return b.Capacity.Sub(b.Tare) }

// ParseBalance reads a balance as it is written on the command line: scale
// interval and capacity, then what else is known, like
//
//	0.01 g, 2000 g, s=0.01 g, tare=150 g, name=Bench
func ParseBalance(text string) (Balance, error) {
	var b Balance
	parts := strings.Split(text, ",")
	if len(parts) < 2 {
		return b, unreadBalance(text, "names no capacity", balanceForm)
	}
	seen := map[string]bool{}
	for i, part := range parts {
		key, value, keyed := strings.Cut(strings.TrimSpace(part), "=")
		if i < 2 {
			key, value, keyed = [...]string{"interval", "capacity"}[i], part, true
		}
		key, value = strings.TrimSpace(key), strings.TrimSpace(value)
		if !keyed || seen[key] {
			return b, unreadBalance(text, fmt.Sprintf("has %q where name=, s= or tare= may stand once each", strings.TrimSpace(part)), balanceForm)
		}
		seen[key] = true
		if key == "name" {
			if value == "" || len(value) > 60 || strings.ContainsFunc(value, func(r rune) bool { return r < ' ' || r == 0x7f }) {
				return b, unreadBalance(text, "has a name that can't be printed", "write a short name, like name=Bench")
			}
			b.Name = value
			continue
		}
		field := b.field(key)
		if field == nil {
			return b, unreadBalance(text, fmt.Sprintf("has a key %q that is not known", key), balanceForm)
		}
		grams, err := ParseGrams(value)
		if err != nil {
			return b, unreadBalance(text, key+": "+err.Error(), balanceForm)
		}
		*field = grams
	}
	if b.Name == "" {
		b.Name = b.Interval.String() + " g to " + b.Capacity.String() + " g"
	}
	return b, b.check(text)
}

const balanceForm = "write scale interval and capacity, then what else is known: 0.01 g,2000 g,s=0.01 g,tare=150 g,name=Bench"

func (b *Balance) field(key string) *quantity.Decimal {
	switch key {
	case "interval":
		return &b.Interval
	case "capacity":
		return &b.Capacity
	case "s":
		return &b.Repeatability
	case "tare":
		return &b.Tare
	}
	return nil
}

// check refuses what no balance is.
func (b *Balance) check(text string) error {
	switch {
	case b.Interval.IsZero():
		return unreadBalance(text, "shows steps of nothing", "write the smallest step it shows, like 0.01 g")
	case b.Room().Cmp(b.Interval) <= 0:
		return unreadBalance(text, "has no room to weigh in: capacity less vessel is not above the scale interval", balanceForm)
	}
	return nil
}

func unreadBalance(text, what, help string) error {
	return &Error{Code: Invalid, Message: fmt.Sprintf("balance %q %s", text, what), Help: help}
}
