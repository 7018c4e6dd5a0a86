package view

import "levigate"

// strips are the few figures that matter for a kind of product, in the order
// they are shown. A wet product has no use for room before 0.60, an oil no one
// activity.
var strips = map[levigate.Continuous][]string{
	levigate.PolarContinuous: {"water.total", "water.activity", "water.reserve", "structure.internal-fraction", "structure.density"},
	levigate.OilContinuous:   {"water.total", "water.oil-dissolved", "water.oil-room", "structure.density"},
	levigate.NoLiquid:        {"water.total", "water.activity", "water.reserve", "structure.density"},
}

// wet is the activity above which a product is a lotion and no low-water gel:
// bacteria grow, and what the water can still take up is not the question.
const wet = 0.95

var wetStrip = []string{"water.total", "water.activity", "structure.internal-fraction", "structure.hlb", "structure.required-hlb", "structure.density"}

// Strip names the figures for the head of the sheet, those the check has.
func Strip(a *levigate.Assessment) []string {
	ids := strips[a.Continuous]
	if f := a.Figures.Get("water.activity"); a.Continuous == levigate.PolarContinuous && f != nil && f.Value > wet {
		ids = wetStrip
	}
	out := []string{}
	for _, id := range ids {
		if a.Figures.Get(id) != nil {
			out = append(out, id)
		}
	}
	return out
}
