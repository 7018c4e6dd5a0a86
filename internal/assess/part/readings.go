package part

import (
	"fmt"
	"math"
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
// spread between them. ok is false when there is none.
func (s *Sheet) Reading(kind, key, property string) (pooled levigate.Reading, ok bool) {
	var sum, weight, lo, hi float64
	var ids []string
	known := true
	for _, r := range s.Readings {
		if r.Subject.Kind != kind || r.Property != property || !strings.EqualFold(r.Subject.Key, key) {
			continue
		}
		w := 1.0
		if r.Plus > 0 {
			w = 1 / (r.Plus * r.Plus)
		} else {
			known = false
		}
		if len(ids) == 0 {
			pooled, lo, hi = r, r.Value, r.Value
		}
		lo, hi = math.Min(lo, r.Value), math.Max(hi, r.Value)
		if r.After < pooled.After {
			pooled.After = r.After
		}
		sum += w * r.Value
		weight += w
		ids = append(ids, r.ID)
	}
	if len(ids) == 0 {
		return pooled, false
	}
	pooled.Value = sum / weight
	pooled.ID = strings.Join(ids, ", ")
	pooled.Plus = 0
	if known {
		pooled.Plus = math.Max(math.Sqrt(1/weight), (hi-lo)/2)
	} else if hi > lo {
		pooled.Plus = (hi - lo) / 2
	}
	return pooled, true
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
