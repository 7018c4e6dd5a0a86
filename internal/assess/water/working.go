package water

import (
	"math"
	"slices"
	"strings"

	"levigate"
	"levigate/calc/water"
	"levigate/quantity"
	"levigate/refdata"
	"levigate/work"
)

// recordActivity writes down how the activity came about: what is there, what
// each part holds at the root, and that the two agree.
func (y *system) recordActivity(rec *work.Recorder, f *work.Figure) {
	a := f.Value
	rec.Say("%s g of water per 100 g are shared out so that everything has one activity; at %s everything together holds just that.",
		quantity.Fixed(y.total, 3), quantity.Fixed(a, 3))
	held := y.terms(rec, a)
	if math.Abs(held-y.total) > 1e-4*y.total {
		y.jump(rec, a)
	} else {
		rec.Say("residual: %s held − %s present = %s g", quantity.Fixed(held, 4), quantity.Fixed(y.total, 4), quantity.Fixed(held-y.total, 4))
	}
	if y.sum.Solution != 1 {
		rec.Say("a reading calibrates the solution: it holds %s times what its curves say", quantity.Fixed(y.sum.Solution, 3))
	}
	y.moles(rec, a)
	if second, ok := y.second(a); ok {
		rec.Say("cross-check by a second mixing rule, the Flory-Huggins mixture: %s", quantity.Fixed(second, 3))
	}
	if y.powders() {
		rec.Say("this is the state at rest: powders wetted by oil exchange water through it, starch within minutes, scrub grains over hours; read no sooner than 48 h after making")
	}
	y.curvesUsed(rec, a)
	growth(rec, f)
}

func (y *system) powders() bool {
	for h := range y.holders {
		if y.holders[h].kind == levigate.Powder && y.sum.Holders[h].Grams >= 0.5 {
			return true
		}
	}
	return false
}

// growth sets the figure against the lowest activity reported for every
// organism on file.
func growth(rec *work.Recorder, f *work.Figure) {
	t := work.Table{Head: []string{"organism", "kind", "grew down to", "this formula", "source"}}
	for _, g := range refdata.GrowthLimits() {
		// Bacteria have grown at lower activity in a polyol than in salt.
		low := g.Activity.Low + g.InPolyol
		says := map[work.Answer]string{work.Below: "below", work.Above: "above", work.CannotTell: "cannot tell"}[f.Against(low)]
		floor := quantity.Fixed(g.Activity.Low, 2)
		if g.Activity.High > g.Activity.Low {
			floor += "–" + quantity.Fixed(g.Activity.High, 2)
		}
		if g.InPolyol != 0 {
			floor += " (" + quantity.Fixed(low, 2) + " in a polyol)"
		}
		t.Rows = append(t.Rows, []string{g.Organism, g.Kind, floor, says, g.From.From.String() + ", " + g.From.Mark.String()})
	}
	rec.Show("lowest activity at which growth was reported; low activity stops growth and does not kill", &t)
}

// moles shows the polar solution by moles of particles, the way an ideal
// solution would be judged, beside what its curves say.
func (y *system) moles(rec *work.Recorder, a float64) {
	var held, particles float64
	for h := range y.holders {
		if sum := &y.sum.Holders[h]; sum.Osmoles > 0 {
			w, _ := sum.Curve.Water(a)
			held += w * sum.Grams * y.sum.Solution
			particles += sum.Osmoles
		}
	}
	if particles == 0 || held == 0 {
		return
	}
	water := held / molarMassWater
	all := water + particles
	t := work.Table{Head: []string{"in the polar solution", "mol of particles per 100 g", "mole fraction"}}
	t.Rows = append(t.Rows, []string{"water", quantity.Fixed(water, 4), quantity.Fixed(water/all, 3)})
	for h := range y.holders {
		if n := y.sum.Holders[h].Osmoles; n > 0 {
			t.Rows = append(t.Rows, []string{y.holders[h].name, quantity.Fixed(n, 4), quantity.Fixed(n/all, 3)})
		}
	}
	rec.Show("the polar solution by mole; an ideal solution would have the activity of water's mole fraction", &t)
}

// jump says that the sum jumps at a, because crystals dissolve there.
func (y *system) jump(rec *work.Recorder, a float64) {
	low, high, _ := y.sum.Jump(a)
	rec.Say("at %s crystals dissolve: the sum jumps from %s to %s g, and the %s g present lie between; the activity stays here until all are dissolved",
		quantity.Fixed(a, 4), quantity.Fixed(low, 2), quantity.Fixed(high, 2), quantity.Fixed(y.total, 2))
	for h, g := range y.sum.Undissolved(a, y.total) {
		if g >= 0.005 {
			rec.Say("%s: %s g stay as crystals and hold nothing", y.holders[h].name, quantity.Fixed(g, 2))
		}
	}
}

// recordReserve writes down a room for water.
func (y *system) recordReserve(rec *work.Recorder, limit, holds float64) {
	rec.Say("water held at %s − water present = %s − %s = %s g per 100 g, mixed evenly", quantity.Fixed(limit, 2),
		quantity.Fixed(holds, 3), quantity.Fixed(y.total, 3), quantity.Fixed(holds-y.total, 3))
	y.terms(rec, limit)
}

// terms shows what every part holds at an activity and returns the sum.
func (y *system) terms(rec *work.Recorder, a float64) float64 {
	t := work.Table{Head: []string{"part", "lines", "dry, g/100 g", "holds, g/g", "factor", "holds, g/100 g"}}
	g, dg := make([]float64, len(y.holders)), make([]float64, len(y.holders))
	y.sum.Each(a, g, dg)
	var sum float64
	order := make([]int, len(y.holders))
	for h := range y.holders {
		order[h] = h
		sum += g[h]
	}
	slices.SortStableFunc(order, func(i, j int) int {
		switch {
		case g[i] > g[j]:
			return -1
		case g[i] < g[j]:
			return 1
		}
		return 0
	})
	for _, h := range order {
		hold, part := &y.holders[h], &y.sum.Holders[h]
		per, _ := part.Curve.Water(a)
		t.Rows = append(t.Rows, []string{hold.name, y.lines(h), quantity.Fixed(part.Grams, 3), quantity.Significant(per, 3),
			quantity.Significant(part.Factor, 3), quantity.Fixed(g[h], 3)})
	}
	for i := range y.unknown {
		t.Rows = append(t.Rows, []string{strings.TrimSuffix(y.unknown[i].cause.Name, " (nobody measured this)"), "", "", "no data", "", "0"})
	}
	t.Foot = []string{"sum", "", "", "", "", quantity.Fixed(sum, 3)}
	rec.Show("water held at activity "+quantity.Fixed(a, 3), &t)
	return sum
}

func (y *system) lines(holder int) string {
	var out []string
	for _, b := range y.brought {
		if n := number(b.line); b.holder == holder && !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	return strings.Join(out, ", ")
}

// curvesUsed opens each part's curve to the equation and its row.
func (y *system) curvesUsed(rec *work.Recorder, a float64) {
	rec.Begin("the curves used")
	defer rec.End()
	for h := range y.holders {
		hold, part := &y.holders[h], &y.sum.Holders[h]
		if part.Grams == 0 {
			continue
		}
		per, _ := part.Curve.Water(a)
		switch iso := hold.iso; iso.Model {
		case levigate.FloryHuggins:
			q := per / molarMassWater * iso.MolarMass / math.Max(iso.Ions, 1)
			phi := q / (q + iso.R)
			from := "isotherms/solutes, row " + iso.Name
			rec.Equation(water.MethodFloryHuggins, water.FloryHuggins(phi, iso.R, part.Curve.Chi()),
				work.Input{Value: phi, Grade: iso.Grade, From: "water and " + hold.name + " by volume"},
				work.Input{Value: iso.R, Grade: iso.Grade, From: from}, work.Input{Value: part.Curve.Chi(), Grade: iso.Grade, From: from})
		case levigate.GAB:
			from := "isotherms/powders, row " + iso.Name
			rec.Equation(water.MethodGAB, per, work.Input{Value: iso.M0, Grade: iso.Grade, From: from}, work.Input{Value: iso.C, Grade: iso.Grade, From: from},
				work.Input{Value: iso.K, Grade: iso.Grade, From: from}, work.Input{Value: a, From: "the root"})
		default:
			rec.Say("%s holds %s g/g at %s (%s)", hold.name, quantity.Significant(per, 3), quantity.Fixed(a, 3), iso.Model)
		}
		rec.Cite(hold.iso.Sources...)
	}
}
