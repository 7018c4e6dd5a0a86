package weighing

import (
	"math/big"

	"levigate"
	"levigate/calc/weighing"
	"levigate/internal/assess/part"
)

// How a pre-mix is looked for: parts of the whole on one of the line, smallest
// first, and weights one can aim at, in powers of ten. Own choice of this
// project; any others that hold the tolerance would do.
var (
	folds  = []int64{2, 3, 4, 5, 10, 20, 25, 50, 100, 200, 500, 1000}
	handy  = []int64{10, 15, 20, 25, 30, 40, 50, 60, 80}
	widest = big.NewRat(4, 1) // minimum weights of active, before more dilution is the better way
)

// premix proposes a pre-dilution for a line that is too little: in which other
// line, and with the least mixture that keeps the tolerance. Nil when no line of
// the formula takes it up, or none is large enough.
func premix(f *levigate.Formula, rows []*row, small *row, scales []*scale, tolerance *big.Rat) *levigate.Premix {
	for _, h := range hosts(f, rows, small) {
		for _, n := range folds {
			if p := small.diluted(h, n, scales, tolerance); p != nil {
				h.lent = new(big.Rat).Sub(h.target, p.Left.Exact())
				m := f.Lines[h.line].Match.Material
				p.In, p.Name = h.line, nameOf(&f.Lines[h.line])
				p.Dissolves = part.Open(m).Kind != levigate.Powder
				p.Watery = m.Water.Typical > 50
				return p
			}
		}
	}
	return nil
}

// diluted tries one dilution, one part in n, in one host.
func (r *row) diluted(host *row, n int64, scales []*scale, tolerance *big.Rat) *levigate.Premix {
	s := r.how.scale
	// Under a limit the mix is rounded so that it never brings more than the formula.
	thinner, less := half, half
	if r.capped {
		thinner, less = ceiling, floor
	}
	take := less(times(r.mass, big.NewRat(n, 1)), s.interval)
	if take.Cmp(s.minimum) < 0 {
		return nil
	}
	left := new(big.Rat).Sub(host.free(), new(big.Rat).Sub(take, r.target))
	// What is left of the host is weighed by itself and must be weighable too.
	if left.Sign() < 0 || left.Sign() > 0 && choose(scales, left).can == levigate.TooLittle {
		return nil
	}
	within, _ := new(big.Rat).Quo(tolerance, hundred).Float64()
	for _, active := range aims(s.minimum, s.interval) {
		// diluent = active · take / wanted − active, as calc/weighing.PremixDiluent.
		diluent := times(active, take)
		diluent = thinner(diluent.Quo(diluent, r.mass).Sub(diluent, active), s.interval)
		whole := new(big.Rat).Add(active, diluent)
		if diluent.Sign() <= 0 || whole.Cmp(take) < 0 || whole.Cmp(s.room) > 0 {
			continue
		}
		a, _ := active.Float64()
		v, _ := diluent.Float64()
		t, _ := take.Float64()
		if u := weighing.Premix(a, v, t, s.Interval.Float(), s.Repeatability.Float()); u <= within {
			parts := new(big.Rat).Quo(diluent, active)
			return &levigate.Premix{
				Parts: decimal(half(parts, big.NewRat(1, 100))), Active: decimal(active), Diluent: decimal(diluent), Take: decimal(take),
				Left: decimal(left), Balance: s.index, Uncertainty: u,
			}
		}
	}
	return nil
}

// aims lists the handy weights from the minimum weight up, as the balance shows
// them.
func aims(minimum, interval *big.Rat) []*big.Rat {
	ten := big.NewRat(10, 1)
	unit := new(big.Rat).Set(smallest)
	for times(unit, big.NewRat(100, 1)).Cmp(minimum) <= 0 {
		unit.Mul(unit, ten)
	}
	var out []*big.Rat
	for range 2 {
		for _, h := range handy {
			g := times(unit, big.NewRat(h, 1))
			if g.Cmp(minimum) >= 0 && g.Cmp(times(minimum, widest)) <= 0 && floor(g, interval).Cmp(g) == 0 {
				out = append(out, g)
			}
		}
		unit = times(unit, ten)
	}
	return out
}
