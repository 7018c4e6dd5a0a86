package weighing

import (
	"math/big"
	"strconv"

	"levigate/quantity"
)

// exactFloat is a floating number as it is written: 0.1 is one tenth.
func exactFloat(v float64) *big.Rat {
	r, ok := new(big.Rat).SetString(strconv.FormatFloat(v, 'f', -1, 64))
	if !ok {
		return new(big.Rat)
	}
	return r
}

// decimal writes a fraction with the places a decimal keeps.
func decimal(r *big.Rat) quantity.Decimal { return quantity.Round(r, quantity.MaxDecimals) }

// half, floor and ceiling give the multiple of a step: nearest with halves
// upwards, next below, next above. For fractions of zero or more.
func half(r, step *big.Rat) *big.Rat {
	up := new(big.Rat).Quo(step, big.NewRat(2, 1))
	return floor(up.Add(up, r), step)
}

func floor(r, step *big.Rat) *big.Rat {
	q := new(big.Rat).Quo(r, step)
	n := new(big.Int).Quo(q.Num(), q.Denom())
	return new(big.Rat).Mul(new(big.Rat).SetInt(n), step)
}

func ceiling(r, step *big.Rat) *big.Rat {
	f := floor(r, step)
	if f.Cmp(r) < 0 {
		f.Add(f, step)
	}
	return f
}

// of is a share in percent of a mass.
func of(mass *big.Rat, percent quantity.Decimal) *big.Rat {
	p := percent.Exact()
	return p.Mul(p, mass).Quo(p, hundred)
}

func times(a *big.Rat, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }

var (
	hundred  = big.NewRat(100, 1)
	smallest = big.NewRat(1, 1e6) // the last place a decimal keeps, g
)
