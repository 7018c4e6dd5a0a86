package validation

import (
	"fmt"

	"levigate/calc/water"
	"levigate/cite"
	"levigate/work"
)

// held gives what powders hold at activity 0.30, 0.45, 0.60 and 0.75, g/g, as
// a separate calculation from the same constants printed it. It guards the
// constants on file and the equation; it says nothing about the powders.
var held = []struct {
	powder string
	grams  [4]float64
}{
	{"microcrystalline cellulose", [4]float64{0.0387, 0.0500, 0.0647, 0.0873}},
	{"extruded rice starch", [4]float64{0.0724, 0.0993, 0.1300, 0.1708}},
	{"rice starch", [4]float64{0.0789, 0.0985, 0.1219, 0.1542}},
	{"maize starch", [4]float64{0.0843, 0.1051, 0.1297, 0.1632}},
	{"tapioca starch", [4]float64{0.0873, 0.1104, 0.1376, 0.1749}},
	{"potato starch", [4]float64{0.0976, 0.1234, 0.1538, 0.1954}},
	{"oat", [4]float64{0.0706, 0.0908, 0.1166, 0.1556}},
	{"kaolin", [4]float64{0.0063, 0.0078, 0.0100, 0.0136}},
	{"illite", [4]float64{0.0238, 0.0295, 0.0371, 0.0489}},
	{"green clay", [4]float64{0.0380, 0.0489, 0.0628, 0.0838}},
	{"bentonite sodium", [4]float64{0.0707, 0.0959, 0.1270, 0.1731}},
	{"bentonite calcium", [4]float64{0.1364, 0.1704, 0.2078, 0.2553}},
	{"rhassoul", [4]float64{0.0867, 0.1112, 0.1392, 0.1762}},
	{"cellulose", [4]float64{0.0416, 0.0544, 0.0706, 0.0947}},
}

var _ = work.Prove(water.MethodGAB, powderChecks()...)

func powderChecks() []work.Check {
	var out []work.Check
	for _, h := range held {
		for i, a := range []float64{0.30, 0.45, 0.60, 0.75} {
			out = append(out, holds(h.powder, a, h.grams[i], 6e-5, work.Independent, cite.Ref{Key: "oddmarrow"}))
		}
	}
	// A desiccant unit of 33 g bentonite must take 3 g at 20 % and 6 g at 40 %.
	unit := cite.Ref{Key: "mil-d-3464"}
	return append(out,
		holds("bentonite calcium", 0.20, 3.0/33, 0.03, work.Published, unit),
		holds("bentonite calcium", 0.40, 6.0/33, 0.03, work.Published, unit))
}

func holds(powder string, a, want, tol float64, by work.Vouch, from cite.Ref) work.Check {
	return work.Check{
		What: fmt.Sprintf("%s at activity %.2f", powder, a),
		Got: func() float64 {
			w, _ := curve(powder, 25).Water(a)
			return w
		}, Want: want, Tol: tol, By: by, From: from,
	}
}

// Safflower oil shaken with water held 0.178 %; the plant-oil row stands for
// many oils and its own band reaches there.
var _ = work.Prove(water.MethodLinear, work.Check{
	What: "plant oil at activity 1 against safflower oil",
	Got: func() float64 {
		w, _ := curve("plant oil", 25).Water(1)
		return w
	}, Want: 0.00178, Tol: 0.0006, By: work.Published, From: cite.Ref{Key: "oil-water-anchors"},
})
