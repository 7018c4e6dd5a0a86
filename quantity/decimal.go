package quantity

import (
	"errors"
	"fmt"
	"strings"

	"github.com/quagmt/udecimal"
)

// Decimal is an exact decimal number: a percentage, a mass weighed, a price.
// The zero value is 0.
type Decimal struct{ d udecimal.Decimal }

// MaxDecimals is how many digits may stand behind the point of a percentage.
const MaxDecimals = 6

// Hundred is the total every formula comes to.
var Hundred = MustDecimal("100")

// ParseDecimal reads digits[.digits] with at most MaxDecimals decimals. Signs,
// exponents, commas, spaces and words are refused, each with what to write
// instead.
func ParseDecimal(s string) (Decimal, error) {
	switch {
	case s == "":
		return Decimal{}, errors.New("a number is missing")
	case strings.HasPrefix(s, "-"):
		return Decimal{}, fmt.Errorf("%s is negative; write zero or more", s)
	case strings.HasPrefix(s, "+"):
		return Decimal{}, fmt.Errorf("%s carries a sign; write the digits alone", s)
	case strings.Contains(s, ","):
		return Decimal{}, fmt.Errorf("%s has a comma; write a point: %s", s, strings.Replace(s, ",", ".", 1))
	}
	whole, frac, dotted := strings.Cut(s, ".")
	if !digits(whole) || dotted && !digits(frac) {
		return Decimal{}, fmt.Errorf("%q is not a number; write digits, with a point if needed, like 12.5", s)
	}
	if len(frac) > MaxDecimals {
		return Decimal{}, fmt.Errorf("%s has %d decimals; at most %d are kept", s, len(frac), MaxDecimals)
	}
	if len(strings.TrimLeft(whole, "0")) > 12 {
		return Decimal{}, fmt.Errorf("%s is too large", s)
	}
	d, err := udecimal.Parse(s)
	if err != nil {
		return Decimal{}, fmt.Errorf("%q is not a number", s)
	}
	return Decimal{d}, nil
}

// MustDecimal is ParseDecimal for text in the program itself.
func MustDecimal(s string) Decimal {
	d, err := ParseDecimal(s)
	if err != nil {
		panic("quantity: " + err.Error())
	}
	return d
}

func digits(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return s != ""
}

// Float is the number as physics uses it: the one place where exact and
// floating numbers meet.
func (d Decimal) Float() float64 { return d.d.InexactFloat64() }

// Add returns d + e.
func (d Decimal) Add(e Decimal) Decimal { return Decimal{d.d.Add(e.d)} }

// Sub returns d - e; the outcome may be negative.
func (d Decimal) Sub(e Decimal) Decimal { return Decimal{d.d.Sub(e.d)} }

// Cmp is -1, 0 or 1 as d is below, equal to or above e.
func (d Decimal) Cmp(e Decimal) int { return d.d.Cmp(e.d) }

// Negative reports d < 0.
func (d Decimal) Negative() bool { return d.d.IsNeg() }

// IsZero reports d = 0.
func (d Decimal) IsZero() bool { return d.d.IsZero() }

// String writes the number without an exponent or trailing zeros.
func (d Decimal) String() string { return d.d.String() }

// Fixed writes at least n decimals, and more where the number has more.
func (d Decimal) Fixed(n int) string {
	s := d.d.String()
	_, frac, dotted := strings.Cut(s, ".")
	if len(frac) >= n {
		return s
	}
	if !dotted {
		s += "."
	}
	return s + strings.Repeat("0", n-len(frac))
}

// UnmarshalJSON reads the number that MarshalJSON writes.
func (d *Decimal) UnmarshalJSON(b []byte) error {
	n, err := udecimal.Parse(string(b))
	if err != nil {
		return fmt.Errorf("%.40q is not an exact number", b)
	}
	d.d = n
	return nil
}

// MarshalJSON writes a JSON number.
func (d Decimal) MarshalJSON() ([]byte, error) { return []byte(d.String()), nil }
