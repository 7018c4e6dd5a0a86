package quantity

import (
	"math/big"

	"github.com/quagmt/udecimal"
)

// Exact is the number as a fraction, for products and quotients that have more
// places than a decimal keeps and must not be rounded before the end.
func (d Decimal) Exact() *big.Rat {
	r, ok := new(big.Rat).SetString(d.d.String())
	if !ok {
		panic("quantity: a decimal is no number: " + d.d.String())
	}
	return r
}

// Round is the decimal nearest to a fraction at so many places, at most
// MaxDecimals; halves go away from zero. It is for numbers of everyday size, not
// above some hundred digits.
func Round(r *big.Rat, places int) Decimal {
	d, err := udecimal.Parse(r.FloatString(clamp(places, 0, MaxDecimals)))
	if err != nil {
		panic("quantity: a fraction is no decimal: " + err.Error())
	}
	return Decimal{d}
}
