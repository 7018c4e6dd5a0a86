// Package water is the part of a formula check that answers what the water in
// it does: its activity, the room left for more, what it weighs in air, how it
// thins when rinsed.
package water

import (
	"fmt"
	"math"
	"sync"

	"levigate"
	"levigate/calc/water"
	"levigate/cite"
	"levigate/internal/assess/part"
	"levigate/quantity"
	"levigate/refdata"
	"levigate/work"
)

// Part gives the water figures and, when curves are wanted, the moisture curve
// and the rinse path.
var Part = part.Part{
	Name: "water",
	Gives: []string{"water.activity", "water.reserve", "water.reserve-070", "water.reserve-075", "water.reserve-080",
		"water.in-air", "water.oil-dissolved", "water.oil-capacity", "water.oil-capacity-05", "water.oil-capacity-25",
		"water.oil-capacity-40", "water.oil-room", "water.isotherm", "water.rinse"},
	Run: run,
}

// reserve is one limit the room for water is told to: a row of the criteria.
type reserve struct {
	id, title string
	limit     float64
}

// reserves are made from the criteria on file, so that a limit stands once.
var reserves = sync.OnceValue(func() []reserve {
	var out []reserve
	for _, c := range refdata.Criteria() {
		out = append(out, reserve{c.Figure, fmt.Sprintf("Room for water to activity %.2f", c.Activity), c.Activity})
	}
	return out
})

// Causes that move a figure by less than these are left out: together they
// stay far below the last digit shown.
const (
	worthActivity = 1e-4
	worthGrams    = 1e-3
)

const (
	activityID    = "water.activity"
	activityTitle = "Water activity"
)

func run(s *part.Sheet) {
	if needs := s.Needs(); needs != "" {
		none(s, needs)
		return
	}
	y := build(s)
	if s.Continuous == levigate.OilContinuous {
		none(s, "not applicable: oil surrounds everything, so the product as a whole has no one activity; see what the oils can dissolve")
		oils(s, y)
		return
	}
	if s.Continuous == levigate.NoLiquid && crystalGrams(s) >= mostlyCrystals {
		none(s, "not applicable: a dry mix of crystals, whose water is bound and no solution; a reading tells")
		return
	}
	reading, measured, pinned := y.calibrate()
	a := y.sum.Activity(y.total)
	at := []float64{a}
	for _, r := range reserves() {
		at = append(at, r.limit)
	}
	f := y.look(at)
	if pinned {
		f.pin, f.pinned = 0, part.Cause(reading)
	}
	f.jump = f.steady(0, y.total)
	y.figures(f, reading, measured)
	if s.Conditions.Humidity > 0 {
		y.inAir(a, pinned)
	}
	y.crystals(a)
	if s.Curves {
		y.isotherm(a, pinned)
		y.rinse(a, pinned)
	}
}

// mostlyCrystals is the share of salts and sugars from which a dry mix has no
// activity by sum: their curves are of solutions, and a bath salt is none, g per
// 100 g.
const mostlyCrystals = 5.0

func crystalGrams(s *part.Sheet) float64 {
	var sum float64
	for i := range s.Lines {
		if l := &s.Lines[i]; l.Opened != nil && l.Kind == levigate.Solute {
			sum += l.Grams
		}
	}
	return sum
}

// none says of every water figure why there is none.
func none(s *part.Sheet, why string) {
	s.Figures = append(s.Figures, work.None(activityID, activityTitle, quantity.One, water.Add, why))
	for _, r := range reserves() {
		s.Figures = append(s.Figures, work.None(r.id, r.title, quantity.GramPer100g, water.Add, why))
	}
}

// figures makes the activity and the reserves from one pass over the causes.
func (y *system) figures(f *field, reading levigate.Reading, measured bool) {
	s := y.sheet
	a := f.at[0]
	n := len(y.holders)*2 + len(s.Lines) + 4
	backing := make([]work.Move, 0, n*(len(reserves())+1))
	moves := make([][]work.Move, len(reserves())+1)
	for i := range moves {
		moves[i] = backing[i*n : i*n : (i+1)*n]
	}
	grade := y.curvesGrade(f)
	roomGrade := make([]cite.Grade, len(reserves()))
	for i := range roomGrade {
		roomGrade[i] = grade
	}
	f.each(func(c *work.Cause, low, high []delta, lw, hw float64) {
		if !measured && !f.jump {
			m := work.Move{Cause: c, Low: f.shift(0, low, lw), High: f.shift(0, high, hw)}
			if c.NotStated || m.Size() > worthActivity {
				moves[0] = append(moves[0], m)
			}
			if m.Size() > 0.002 {
				grade = cite.Weakest(grade, c.Grade)
			}
		}
		for i := range reserves() {
			m := work.Move{Cause: c, Low: f.holdsMore(i+1, low, lw) - lw, High: f.holdsMore(i+1, high, hw) - hw}
			if c.NotStated || m.Size() > worthGrams {
				moves[i+1] = append(moves[i+1], m)
			}
			if m.Size() > 0.02*math.Max(math.Abs(f.all[i+1]-y.total), 1) {
				roomGrade[i] = cite.Weakest(roomGrade[i], c.Grade)
			}
		}
	})
	if f.jump && !measured {
		moves[0] = append(moves[0], work.Move{Cause: &saturation, Low: saturation.Low, High: saturation.High})
	}
	for i := range reserves() {
		if m := f.dissolving(i + 1); m.Size() > worthGrams {
			moves[i+1] = append(moves[i+1], m)
		}
	}
	act := work.Figure{ID: activityID, Title: activityTitle, Unit: quantity.One, State: work.Good, Method: water.Add, Grade: grade, Sources: y.sources()}
	act.SetBand(a, moves[0], 0, 1)
	if y.total <= 0 {
		act.Notes = append(act.Notes, "no line brings water")
	}
	if a < lowest {
		tooDry(&act)
	}
	y.atRange(&act, a)
	y.crossCheck(&act, a)
	switch {
	case measured && math.Abs(reading.Conditions.Temperature-y.celsius) < 0.5:
		calculated := y.uncalibrated()
		act.Value, act.Low, act.High = calculated.Value, calculated.Low, calculated.High
		part.Become(&act, reading)
		act.Low, act.High = math.Max(act.Low, 0), math.Min(act.High, 1)
		if f.pinned == nil {
			act.Notes = append(act.Notes, "the reading moves nothing else: there is no solution it could calibrate")
		}
	case measured && f.pinned != nil:
		act.Moves = []work.Move{{Cause: f.pinned, Low: -reading.Plus, High: reading.Plus}}
		act.SetBand(a, act.Moves, 0, 1)
		act.Grade, act.Reading = cite.MeasuredHere, reading.ID
		act.Notes = append(act.Notes, "calibrated by a reading at another temperature")
	}
	if rec := s.Recorder(activityTitle); rec.On() {
		y.recordActivity(rec, &act)
		act.Working = rec.Step()
	}
	s.Figures = append(s.Figures, act)
	for i, r := range reserves() {
		fig := work.Figure{ID: r.id, Title: r.title, Unit: quantity.GramPer100g, State: act.State, Method: Room, Grade: roomGrade[i], Sources: act.Sources}
		if measured && f.pinned != nil {
			slope := f.dll[0] * reading.Plus * f.sol[i+1] / math.Max(f.sol[0], 1e-12)
			moves[i+1] = append(moves[i+1], work.Move{Cause: f.pinned, Low: slope, High: -slope})
		}
		fig.SetBand(f.all[i+1]-y.total, moves[i+1], math.Inf(-1), math.Inf(1))
		if len(y.holders) == 0 {
			fig.Notes = append(fig.Notes, "nothing in the formula holds water")
		}
		y.atRange(&fig, r.limit)
		if rec := s.Recorder(r.title); rec.On() {
			y.recordReserve(rec, r.limit, f.all[i+1])
			fig.Working = rec.Step()
		}
		s.Figures = append(s.Figures, fig)
	}
}

// curvesGrade is the weakest evidence among the curves that hold more than a
// fiftieth of the water.
func (y *system) curvesGrade(f *field) cite.Grade {
	grade := cite.Reviewed
	for h := range y.holders {
		if f.g[0][h] > 0.02*f.all[0] {
			grade = cite.Weakest(grade, y.holders[h].iso.Grade)
		}
	}
	return grade
}

// holdsMore is the change in what the formula holds at a point, which cannot
// fall below nothing.
func (f *field) holdsMore(p int, d []delta, water float64) float64 {
	return math.Max(f.change(p, d, water), -0.95*f.all[p])
}

// change is the change of the sum at a point. Where a reading pins the model,
// every change is taken back at the pin.
func (f *field) change(p int, d []delta, water float64) float64 {
	sol := d[p].sol
	if f.pin >= 0 && f.sol[f.pin] > 0 {
		q := d[f.pin]
		sol += (water - q.rest - q.sol) / f.sol[f.pin] * f.sol[p]
	}
	return sol + d[p].rest
}

// shift is how far the root at point p moves when the sum and the water
// present change. Small moves follow the slope; large ones the logit, in which
// a solution's water is nearly a straight line, so that they end inside 0 to 1.
func (f *field) shift(p int, d []delta, water float64) float64 {
	a, w, slope := f.at[p], f.all[p], f.dll[p]
	more := f.change(p, d, water)
	if a >= 1 {
		return f.freeWater(d[p].sol)
	}
	if slope <= 0 || w <= 0 {
		return 0
	}
	straight := (water - more) / slope
	if f.direct {
		return math.Max(-a, math.Min(straight, 1-a))
	}
	if math.Abs(straight) < 0.05 && a+straight > 0 && a+straight < 1 {
		return straight
	}
	ratio := math.Log(math.Max(1+water/w, 1e-6)) - math.Log(math.Max(1+more/w, 1e-6))
	x := math.Log(a/(1-a)) + ratio*w/(slope*a*(1-a))
	return 1/(1+math.Exp(-x)) - a
}

// freeWater is where pure water would stand if what nobody measured were an
// ideal solute: its mole fraction.
func (f *field) freeWater(sol float64) float64 {
	n := f.total / molarMassWater
	osmoles := sol / molarMassWater * (1 - nearlyOne)
	if n+osmoles == 0 {
		return 0
	}
	return n/(n+osmoles) - 1
}

// Room is the method of the reserves.
var Room = work.Register(&work.Method{
	ID:    "water.room",
	Title: "Room for water to an activity",
	Kind:  work.Procedure,
	Text: "What the whole formula holds at the limit, mixed evenly, less the water it has: W(limit) − W. " +
		"Negative when the formula is over the limit already. A wet surface or nozzle is not mixed evenly.",
	Unit:     quantity.GramPer100g,
	Accuracy: "as the isotherms at the limit; see docs/validation.md",
	Sources:  []cite.Ref{{Key: "stokes1966"}},
	Checks: []work.Check{{
		What: "adding the room to one made-up sugar brings it to the limit", By: work.Law, Want: 0.6, Tol: 1e-9,
		Got: roomLaw,
	}},
})

func roomLaw() float64 {
	c := water.NewCurve(water.Params{Kind: water.KindFloryHuggins, MolarMass: 150, R: 6, Chi: -0.2}, 25)
	sum := water.Sum{Solution: 1, Holders: []water.Holder{{Curve: &c, Grams: 30, Factor: 1, Osmoles: 0.2}}}
	holds, _ := sum.Water(0.6)
	const present = 2
	return sum.Activity(present + (holds - present))
}
