package water

import (
	"math"

	"levigate"
	"levigate/cite"
	"levigate/work"
)

// saturation is the doubt about where crystals dissolve: a recalled saturation
// is good to about ±0.015 in activity, a judgement of this project.
var saturation = work.Cause{Key: "method/saturation", Name: "the activity at which crystals dissolve", Low: -saturationWidth, High: saturationWidth,
	Grade: cite.Estimated, Settle: "look for crystals after 48 h, and measure the water activity"}

const saturationWidth = 0.015

// steady gives the slope at a root where crystals are about, and says whether
// the root lies in a jump. Inside one the sum has no slope: the activity stays
// where the crystals dissolve, whatever else is doubtful. Between jumps the
// slope of the curves leaves out crystals dissolving, so it is taken from the
// sum itself. present is the water the root was found for.
func (f *field) steady(p int, present float64) (jump bool) {
	a := f.at[p]
	missed := math.Abs(f.all[p]-present) > 1e-5*present
	if a <= lowest || a >= 1-lowest || !f.partly[p] && !missed {
		return false
	}
	if _, _, jumps := f.sum.Jump(a); jumps {
		return true
	}
	const h = 1e-5
	low, _ := f.sum.Water(a - h)
	high, _ := f.sum.Water(a + h)
	f.dll[p] = math.Max(f.dll[p], (high-low)/(2*h))
	return false
}

func (f *field) hasCrystals() bool {
	for h := range f.sum.Holders {
		if f.sum.Holders[h].Crystal {
			return true
		}
	}
	return false
}

// dissolving is the move of what is held at point p if crystals dissolve a
// little earlier or later than is on file.
func (f *field) dissolving(p int) work.Move {
	m := work.Move{Cause: &saturation}
	a := f.at[p]
	if !f.hasCrystals() || a <= saturationWidth || a >= 1-saturationWidth {
		return m
	}
	smooth := f.dll[p] * saturationWidth
	low, _ := f.sum.Water(a - saturationWidth)
	m.Low = math.Min(0, low-f.all[p]+smooth)
	if f.partly[p] {
		high, _ := f.sum.Water(a + saturationWidth)
		m.High = math.Max(0, high-f.all[p]-smooth)
	}
	return m
}

// lowest is the activity below which no curve is defined: nothing was measured
// so dry.
const lowest = 0.02

// tooDry widens an activity below what the curves are defined for.
func tooDry(f *work.Figure) {
	f.High = math.Max(f.High, lowest)
	f.Low = 0
	f.State = work.OutOfRange
	f.Notes = append(f.Notes, "drier than 0.02, where no moisture curve was measured: read it as below 0.02")
}

// crystals adds what stays undissolved to what the formula holds.
func (y *system) crystals(a float64) {
	for h, g := range y.sum.Undissolved(a, y.total) {
		if g < 0.005 {
			continue
		}
		held := levigate.Held{Kind: levigate.Solute, Name: y.holders[h].name + " (undissolved)", Grams: levigate.Exactly(g)}
		for _, b := range y.brought {
			if b.holder == h {
				held.From = append(held.From, b.line)
				y.sheet.Lines[b.line].Undissolved += g * y.partOf(b)
			}
		}
		y.sheet.Composition.Held = append(y.sheet.Composition.Held, held)
	}
}
