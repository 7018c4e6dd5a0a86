package water

import (
	"fmt"
	"math"
	"slices"

	"levigate"
	"levigate/calc/water"
	"levigate/cite"
	"levigate/internal/assess/part"
	"levigate/quantity"
	"levigate/work"
)

// calibrate finds a reading of the activity and sets the solution's factor so
// that the model passes through it. A reading that no factor can reach (there
// is no solution, or powders alone hold more) still becomes the figure, but
// moves nothing else.
func (y *system) calibrate() (r levigate.Reading, measured, pinned bool) {
	s := y.sheet
	r, ok := s.Reading("version", s.Formula.Code, activityID)
	if !ok || r.Value <= 0 || r.Value >= 1 {
		return r, false, false
	}
	at := y.at(r.Conditions.Temperature)
	n := len(y.holders)
	g, dg := make([]float64, n), make([]float64, n)
	at.sum.Each(r.Value, g, dg)
	var sol, rest float64
	for h := range n {
		if y.sum.Holders[h].Osmoles > 0 {
			sol += g[h]
		} else {
			rest += g[h]
		}
	}
	if sol <= 0 || y.total <= rest {
		return r, true, false
	}
	y.sum.Solution = (y.total - rest) / sol
	return r, true, true
}

// uncalibrated is what the model says without the reading.
func (y *system) uncalibrated() work.Band {
	z := *y
	z.sum.Holders = slices.Clone(y.sum.Holders)
	z.sum.Solution = 1
	a := z.sum.Activity(z.total)
	f := z.look([]float64{a})
	var moves []work.Move
	f.each(func(c *work.Cause, low, high []delta, lw, hw float64) {
		moves = append(moves, work.Move{Cause: c, Low: f.shift(0, low, lw), High: f.shift(0, high, hw)})
	})
	down, up := work.Quadrature(moves)
	return work.Band{Value: a, Low: math.Max(0, a-down), High: math.Min(1, a+up)}
}

// atRange marks a figure that was calculated outside what the model was proved
// for.
func (y *system) atRange(f *work.Figure, a float64) {
	if outside(y.celsius) > 0 {
		f.State = work.OutOfRange
		f.Notes = append(f.Notes, fmt.Sprintf("%.0f °C lies outside %s, where this was compared with measurements", y.celsius, provedRange))
	}
	for i := range y.unknown {
		if u := &y.unknown[i]; u.cause.NotStated {
			f.Notes = append(f.Notes, u.cause.Name+": no molar mass on file, so the band does not hold it")
		}
	}
}

// crossCheck works the solution out by a second mixing rule and says so where
// the two differ by more than the mixing band.
func (y *system) crossCheck(f *work.Figure, a float64) {
	second, ok := y.second(a)
	if !ok {
		return
	}
	if c := y.look1(a).mixes(); c != nil && math.Abs(second-a) > c.High {
		f.Notes = append(f.Notes, fmt.Sprintf("a second mixing rule (Flory-Huggins mixture) gives %.2f: measure this one", second))
	}
}

func (y *system) look1(float64) *field { return &field{system: y} }

// second is the activity by the Flory-Huggins mixture, from the water the
// solution holds; ok is false where a solute has no such form.
func (y *system) second(a float64) (float64, bool) {
	parts := make([]water.Part, 0, len(y.holders))
	var held float64
	for h := range y.holders {
		sum := &y.sum.Holders[h]
		if sum.Osmoles == 0 {
			continue
		}
		if y.holders[h].iso.Model != levigate.FloryHuggins {
			return 0, false
		}
		iso := y.holders[h].iso
		w, _ := sum.Curve.Water(a)
		held += w * sum.Grams
		parts = append(parts, water.Part{Moles: sum.Osmoles, R: iso.R, Chi: sum.Curve.Chi()})
	}
	if len(parts) < 2 || held <= 0 {
		return 0, false
	}
	return water.FloryHugginsMixture(held/molarMassWater, parts), true
}

// sources lists what the holders' curves rest on, once each.
func (y *system) sources() []cite.Ref {
	out := make([]cite.Ref, 0, len(y.holders)+2)
	for h := range y.holders {
		if y.sum.Holders[h].Grams < 0.05 {
			continue
		}
		for _, r := range y.holders[h].iso.Sources {
			if !slices.Contains(out, r) {
				out = append(out, r)
			}
		}
	}
	return append(out, water.Add.Sources...)
}

// inAir is what 100 g of the formula gains, in the end, in air of a humidity.
func (y *system) inAir(a float64, pinned bool) {
	s := y.sheet
	const id = "water.in-air"
	title := fmt.Sprintf("Change of weight at rest in air of %.0f %% humidity", s.Conditions.Humidity)
	f := y.pinnedLook([]float64{s.Conditions.Humidity / 100}, a, pinned)
	var moves []work.Move
	f.each(func(c *work.Cause, low, high []delta, lw, hw float64) {
		m := work.Move{Cause: c, Low: f.holdsMore(0, low, lw) - lw, High: f.holdsMore(0, high, hw) - hw}
		if c.NotStated || m.Size() > worthGrams {
			moves = append(moves, m)
		}
	})
	fig := work.Figure{ID: id, Title: title, Unit: quantity.GramPer100g, State: work.Good, Method: Room, Grade: y.curvesGrade(f), Sources: y.sources(),
		Notes: []string{"where it would end if left open; a stiff gel may need weeks, its surface minutes"}}
	fig.SetBand(f.all[0]-y.total, moves, math.Inf(-1), math.Inf(1))
	y.atRange(&fig, f.at[0])
	if rec := s.Recorder(title); rec.On() {
		y.recordReserve(rec, f.at[0], f.all[0])
		fig.Working = rec.Step()
	}
	s.Figures = append(s.Figures, fig)
}

// number writes a line's number as a person counts.
func number(i int) string { return part.Number(i) }
