package part

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"levigate"
	"levigate/cite"
	"levigate/work"
)

// Property reading names.
const (
	PropertyWater   = "water"
	PropertyDensity = "density"
)

// Reading finds the readings of one property of one subject and pools them:
// the mean weighted by 1/width², with the wider of the pooled width and the
// spread between them. Readings at another temperature than the one nearest to
// the check's are left out, and so are those without a spread where others
// state theirs. ok is false when there is none.
func (s *Sheet) Reading(kind, key, property string) (pooled levigate.Reading, ok bool) {
	found := s.of(kind, key, property)
	if len(found) == 0 {
		return pooled, false
	}
	pooled = found[0]
	lo, hi := pooled.Value, pooled.Value
	var sum, weight float64
	var ids []string
	for _, r := range found {
		w := 1.0
		if r.Plus > 0 {
			w = 1 / (r.Plus * r.Plus)
		}
		lo, hi = math.Min(lo, r.Value), math.Max(hi, r.Value)
		pooled.After = min(pooled.After, r.After)
		sum += w * r.Value
		weight += w
		ids = append(ids, r.ID)
	}
	pooled.Value = sum / weight
	pooled.ID = strings.Join(ids, ", ")
	if pooled.Plus > 0 {
		pooled.Plus = math.Sqrt(1 / weight)
	}
	pooled.Plus = math.Max(pooled.Plus, (hi-lo)/2)
	return pooled, true
}

// of lists the readings that count for one property of one subject.
func (s *Sheet) of(kind, key, property string) (out []levigate.Reading) {
	const alike = 2 // °C
	var near float64
	stated := false
	for _, r := range s.Readings {
		if r.Subject.Kind != kind || r.Property != property || !strings.EqualFold(r.Subject.Key, key) {
			continue
		}
		// A reading without conditions was taken in the room.
		if r.Conditions == (levigate.Conditions{}) {
			r.Conditions.Temperature = levigate.Room
		}
		if d := math.Abs(r.Conditions.Temperature - s.Conditions.Temperature); len(out) == 0 || d < near {
			near = d
		}
		stated = stated || r.Plus > 0
		out = append(out, r)
	}
	return slices.DeleteFunc(out, func(r levigate.Reading) bool {
		return stated && r.Plus == 0 || math.Abs(r.Conditions.Temperature-s.Conditions.Temperature) > near+alike
	})
}

// Cause is a reading as a cause of whatever rests on it.
func Cause(r levigate.Reading) *work.Cause {
	return &work.Cause{
		Key: "reading/" + r.ID, Name: fmt.Sprintf("reading %s (%s)", r.ID, r.Instrument),
		Low: r.Value - r.Plus, Mid: r.Value, High: r.Value + r.Plus,
		Grade: cite.MeasuredHere, NotStated: r.Plus == 0,
		Settle: "repeat the reading and note its spread",
	}
}

// Become puts a reading in a calculated figure's place and keeps the
// calculated value beside it.
func Become(f *work.Figure, r levigate.Reading) {
	if f.State != work.Missing {
		f.Calculated = &work.Band{Value: f.Value, Low: f.Low, High: f.High}
	}
	c := Cause(r)
	f.SetBand(r.Value, []work.Move{{Cause: c, Low: -r.Plus, High: r.Plus}}, math.Inf(-1), math.Inf(1))
	f.State, f.Grade, f.Reading = work.Good, cite.MeasuredHere, r.ID
	if c.NotStated {
		f.Notes = append(f.Notes, "the reading's own spread was not stated, so its band has no width")
	}
	if r.After > 0 && r.After < rest {
		f.Notes = append(f.Notes, fmt.Sprintf("read %.0f h after making; the water in powders may not be at rest before 48 h", r.After.Hours()))
	}
}
