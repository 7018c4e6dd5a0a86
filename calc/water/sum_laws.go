package water

import "math"

// A made-up sugar and salt for the laws of the sum: any curve must obey them.
var (
	lawSugar = Params{Kind: KindFloryHuggins, MolarMass: 180, R: 9, Chi: 0.3, Saturation: 0.8}
	lawSalt  = Params{Kind: KindPitzer, MolarMass: 58.44, Ions: 2, Beta0: 0.0765, Beta1: 0.2664, CPhi: 0.00127, MaxMolality: 6, Saturation: 0.7529}
)

func holderOf(p Params, grams float64, crystal bool) Holder {
	c := NewCurve(p, 25)
	return Holder{Curve: &c, Grams: grams, Factor: 1, Osmoles: grams / p.MolarMass * math.Max(p.Ions, 1), Crystal: crystal}
}

// splitLaw is the difference one solute on two lines makes to the activity.
func splitLaw() float64 {
	whole := Sum{Solution: 1, Holders: []Holder{holderOf(lawSugar, 30, false), holderOf(lawSalt, 2, false)}}
	split := Sum{Solution: 1, Holders: []Holder{holderOf(lawSugar, 11, false), holderOf(lawSalt, 2, false), holderOf(lawSugar, 19, false)}}
	return whole.Activity(12) - split.Activity(12)
}

// aloneLaw is how far crystals with too little water to dissolve them stand
// from their own saturation.
func aloneLaw() float64 {
	s := Sum{Solution: 1, Holders: []Holder{holderOf(lawSalt, 40, true)}}
	return s.Activity(20) - lawSalt.Saturation
}
