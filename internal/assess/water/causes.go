package water

import (
	"fmt"
	"math"

	"levigate"
	"levigate/cite"
	"levigate/work"
)

// field is the system looked at through a few activities: what every holder
// holds at each, and its slope.
type field struct {
	*system
	at       []float64
	g, dg    [][]float64 // [point][holder]
	all, dll []float64   // sums over holders
	sol, dsl []float64   // sums over dissolved solutes
	pin      int         // the point a reading pins the model at; -1 without one
	pinned   *work.Cause // the reading
	// direct says that the cause being emitted is a doubt about the activity
	// itself, so that its move is read off and not solved for.
	direct  bool
	jump    bool       // the root lies in a jump: crystals decide it
	partly  []bool     // at each point: crystals stand undissolved there
	scratch [2][]delta // low and high end
}

// delta is what one end of a cause changes at one point: the water held by the
// dissolved solutes and by everything else.
type delta struct{ sol, rest float64 }

func (y *system) look(at []float64) *field {
	n := len(y.holders)
	f := &field{system: y, at: at, pin: -1, partly: make([]bool, len(at))}
	buf := make([]float64, 2*n*len(at)+4*len(at))
	take := func(k int) []float64 { s := buf[:k:k]; buf = buf[k:]; return s }
	f.g, f.dg = make([][]float64, len(at)), make([][]float64, len(at))
	f.all, f.dll, f.sol, f.dsl = take(len(at)), take(len(at)), take(len(at)), take(len(at))
	f.scratch[0], f.scratch[1] = make([]delta, len(at)), make([]delta, len(at))
	for p, a := range at {
		f.g[p], f.dg[p] = take(n), take(n)
		f.partly[p] = y.sum.Each(a, f.g[p], f.dg[p])
		for h := range n {
			f.all[p] += f.g[p][h]
			f.dll[p] += f.dg[p][h]
			if y.sum.Holders[h].Osmoles > 0 {
				f.sol[p] += f.g[p][h]
				f.dsl[p] += f.dg[p][h]
			}
		}
	}
	return f
}

// pinnedLook is look with the root as one more point at the end, where a
// reading pins the model if there is one.
func (y *system) pinnedLook(at []float64, root float64, pinned bool) *field {
	if !pinned {
		return y.look(at)
	}
	f := y.look(append(at[:len(at):len(at)], root))
	f.pin = len(at)
	return f
}

// each calls emit for every cause with what its low and high end change: the
// water held at each point, and the water present.
func (f *field) each(emit func(c *work.Cause, low, high []delta, lowWater, highWater float64)) {
	f.waterCauses(emit)
	f.shareCauses(emit)
	f.isothermCauses(emit)
	f.missingCauses(emit)
	f.methodCauses(emit)
}

func (f *field) clear() (low, high []delta) {
	clear(f.scratch[0])
	clear(f.scratch[1])
	return f.scratch[0], f.scratch[1]
}

// put adds a change of a holder's water at point p.
func (f *field) put(d []delta, p, holder int, change float64) {
	if f.sum.Holders[holder].Osmoles > 0 {
		d[p].sol += change
	} else {
		d[p].rest += change
	}
}

// partOf is the share of a holder that one line's dry substance makes up.
func (y *system) partOf(b brought) float64 {
	l := &y.sheet.Lines[b.line]
	g := l.Grams * (100 - l.Water.Typical) / 100
	if b.share >= 0 {
		g *= l.Dry[b.share].Percent.Typical / 100
	}
	if whole := y.sum.Holders[b.holder].Grams; whole > 0 {
		return g / whole
	}
	return 0
}

// waterCauses: a wetter lot brings more water and less of everything else.
func (f *field) waterCauses(emit func(*work.Cause, []delta, []delta, float64, float64)) {
	for i := range f.sheet.Lines {
		l := &f.sheet.Lines[i]
		if l.Opened == nil || l.Grams == 0 || f.seenBefore(i) || (l.Water.Low == l.Water.High && !l.WaterCause.NotStated) {
			continue
		}
		low, high := f.clear()
		var lw, hw float64
		for j := i; j < len(f.sheet.Lines); j++ {
			m := &f.sheet.Lines[j]
			if m.Opened != l.Opened {
				continue
			}
			lw += m.Grams * (m.Water.Low - m.Water.Typical) / 100
			hw += m.Grams * (m.Water.High - m.Water.Typical) / 100
		}
		dry := 100 - l.Water.Typical
		if dry > 0 {
			kl, kh := (l.Water.Typical-l.Water.Low)/dry, (l.Water.Typical-l.Water.High)/dry
			for _, b := range f.brought {
				if f.sheet.Lines[b.line].Opened != l.Opened {
					continue
				}
				part := f.partOf(b)
				for p := range f.at {
					g := f.g[p][b.holder] * part
					f.put(low, p, b.holder, g*kl)
					f.put(high, p, b.holder, g*kh)
				}
			}
		}
		emit(l.WaterCause, low, high, lw, hw)
	}
}

// seenBefore reports whether an earlier line brings the same raw material.
func (f *field) seenBefore(i int) bool {
	for j := range i {
		if f.sheet.Lines[j].Opened == f.sheet.Lines[i].Opened && f.sheet.Lines[j].Grams > 0 {
			return true
		}
	}
	return false
}

// shareCauses: one part of a blend moves and the others make room, so that the
// whole stays 100.
func (f *field) shareCauses(emit func(*work.Cause, []delta, []delta, float64, float64)) {
	for i := range f.sheet.Lines {
		l := &f.sheet.Lines[i]
		if l.Opened == nil || l.Grams == 0 || len(l.Shares) == 0 || f.seenBefore(i) {
			continue
		}
		for k := range l.Shares {
			if k == 1 && len(l.Dry) == 2 {
				break // of two parts, one moving is the other moving
			}
			c, moved := &l.Shares[k], l.ShareOf[k]
			low, high := f.clear()
			for _, b := range f.brought {
				m := &f.sheet.Lines[b.line]
				if m.Opened != l.Opened || b.share < 0 {
					continue
				}
				kl, kh := blend(b.share == moved, c.Mid, c.Low), blend(b.share == moved, c.Mid, c.High)
				part := f.partOf(b)
				for p := range f.at {
					g := f.g[p][b.holder] * part
					f.put(low, p, b.holder, g*kl)
					f.put(high, p, b.holder, g*kh)
				}
			}
			emit(c, low, high, 0, 0)
		}
	}
}

// blend is the relative change of a part of a blend when one part goes from
// mid to end, in % of the whole.
func blend(itself bool, mid, end float64) float64 {
	switch {
	case itself && mid > 0:
		return end/mid - 1
	case itself || mid >= 100:
		return 0
	}
	return (mid - end) / (100 - mid)
}

// isothermCauses: each substance's own curve, and what powders keep of theirs.
func (f *field) isothermCauses(emit func(*work.Cause, []delta, []delta, float64, float64)) {
	for h := range f.holders {
		hold, sum := &f.holders[h], &f.sum.Holders[h]
		low, high := f.clear()
		for p, a := range f.at {
			switch {
			case sum.Osmoles > 0:
				// The true activity lies lower: at a given activity more is held.
				down, up := sum.Curve.Band(a)
				f.put(low, p, h, f.dg[p][h]*down)
				f.put(high, p, h, -f.dg[p][h]*up)
			case hold.iso.AtOne.Known():
				r := hold.iso.AtOne
				f.put(low, p, h, f.g[p][h]*(r.Low/r.Typical-1))
				f.put(high, p, h, f.g[p][h]*(r.High/r.Typical-1))
			default:
				f.put(low, p, h, -f.g[p][h]*hold.iso.Relative)
				f.put(high, p, h, f.g[p][h]*hold.iso.Relative)
			}
		}
		f.direct = sum.Osmoles > 0
		emit(hold.isotherm, low, high, 0, 0)
		f.direct = false
		if r := hold.iso.InPolyol; f.polyol && r.Known() && r.Low < r.High {
			low, high := f.clear()
			for p := range f.at {
				f.put(low, p, h, f.g[p][h]*(r.Low/r.Typical-1))
				f.put(high, p, h, f.g[p][h]*(r.High/r.Typical-1))
			}
			emit(hold.factor, low, high, 0, 0)
		}
	}
}

// missingCauses: solutes nobody measured reach to their mole fraction, heads of
// surfactants to the sugar they are.
func (f *field) missingCauses(emit func(*work.Cause, []delta, []delta, float64, float64)) {
	for i := range f.unknown {
		u := &f.unknown[i]
		low, high := f.clear()
		for p, a := range f.at {
			high[p].sol = u.osmoles * molarMassWater * a / math.Max(1-a, 1-nearlyOne)
		}
		emit(u.cause, low, high, 0, 0)
	}
	for i := range f.heads {
		u := &f.heads[i]
		low, high := f.clear()
		for p, a := range f.at {
			w, _ := u.curve.Water(math.Min(a, nearlyOne))
			high[p].sol = u.grams * w
		}
		emit(u.cause, low, high, 0, 0)
	}
}

// nearlyOne stands for pure water where something that dissolves would hold
// water without end.
const nearlyOne = 1 - 1e-9

const molarMassWater = 18.0153 // g/mol, IUPAC 2021

// The mixing rule's own band, in activity. Accuracy against measured mixtures
// is in docs/validation.md; the sizes are a judgement of this project.
var (
	mixing = work.Cause{Key: "method/mixing", Name: "the mixing rule (isotherms add)", Low: -0.02, High: 0.02,
		Grade: cite.Estimated, Settle: "measure the water activity of the finished product in a closed cup at 25 °C"}
	mixingHard = work.Cause{Key: "method/mixing", Name: "the mixing rule, with honey, salts or a blend of esters", Low: -0.03, High: 0.03,
		Grade: cite.Estimated, Settle: mixing.Settle}
	tempered = work.Cause{Key: "method/temperature", Name: "temperature outside " + provedRange,
		Grade: cite.Assumed, Settle: "measure at that temperature"}
)

// methodCauses: the mixing rule, and temperatures it was not proved at.
func (f *field) methodCauses(emit func(*work.Cause, []delta, []delta, float64, float64)) {
	if c := f.mixes(); c != nil {
		low, high := f.clear()
		for p, a := range f.at {
			f.spread(low, high, p, c.High*mixTaper(a))
		}
		f.direct = true
		emit(c, low, high, 0, 0)
		f.direct = false
	}
	if off := outside(f.celsius); off > 0 {
		low, high := f.clear()
		for p, a := range f.at {
			f.spread(low, high, p, 0.001*off*mixTaper(a))
		}
		c := tempered
		c.Low, c.High = -0.001*off, 0.001*off
		f.direct = true
		emit(&c, low, high, 0, 0)
		f.direct = false
	}
}

// spread moves the whole solution's activity by ± u at a point.
func (f *field) spread(low, high []delta, p int, u float64) {
	low[p].sol += f.dsl[p] * u
	low[p].rest += (f.dll[p] - f.dsl[p]) * u
	high[p].sol -= f.dsl[p] * u
	high[p].rest -= (f.dll[p] - f.dsl[p]) * u
}

// mixTaper closes the mixing band towards pure water, where it is known what
// is left: a third of it remains for what dilute mixtures do.
func mixTaper(a float64) float64 {
	return math.Min(1, math.Max((1-a)/0.25, 0.3*math.Min(1, (1-a)/0.01)))
}

// mixes is the mixing rule's cause, nil where nothing mixes: one substance's
// own curve needs no rule.
func (f *field) mixes() *work.Cause {
	// Two esters or more are a blend: how they share the polyol is less known.
	n, hard := 0, f.honey || len(f.heads) > 1
	for h := range f.holders {
		if f.sum.Holders[h].Grams <= 0 || f.holders[h].kind == levigate.Oil {
			continue
		}
		n++
		hard = hard || f.holders[h].iso.Ions > 1 && f.sum.Holders[h].Grams >= 0.1
	}
	switch {
	case n < 2:
		return nil
	case hard:
		return &mixingHard
	}
	return &mixing
}

// outside is how many degrees a temperature lies outside the range the
// isotherms were proved in.
func outside(celsius float64) float64 {
	return math.Max(math.Max(levigate.ProvedFrom-celsius, celsius-levigate.ProvedTo), 0)
}

// provedRange names that range.
var provedRange = fmt.Sprintf("%.0f to %.0f °C", levigate.ProvedFrom, levigate.ProvedTo)
