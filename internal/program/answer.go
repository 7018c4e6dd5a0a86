package program

import (
	"fmt"
	"strings"
	"sync"

	"levigate"
	"levigate/quantity"
	"levigate/refdata"
	"levigate/work"
	"levigate/work/render"
)

// Answer is what a check says about water, in a sentence or two: where the
// product stands, on which side of the limits, and how much more it can take.
// Empty when water was not asked about.
func Answer(a *levigate.Assessment) string {
	f := a.Figures.Get("water.activity")
	switch {
	case f == nil:
		return ""
	case f.State == work.Missing && a.Continuous == levigate.OilContinuous:
		return oilAnswer(a)
	case f.State == work.Missing:
		return "No water activity: " + strings.Join(f.Notes, "; ") + "."
	}
	said := fmt.Sprintf("Water activity %s at %s °C, %s: %s.", render.Value(f),
		render.Plain(a.Conditions.Temperature), render.Sentence(f), sides(f))
	if room := a.Figures.Get("water.reserve"); room != nil && room.State != work.Missing {
		said += " " + roomFor(room)
	}
	return said
}

// sides says on which side of each limit the whole band lies.
func sides(f *work.Figure) string {
	by := map[work.Answer][]string{}
	for _, c := range refdata.Criteria() {
		side := f.Against(c.Activity)
		by[side] = append(by[side], quantity.Fixed(c.Activity, 2))
	}
	var out []string
	if l := by[work.Above]; len(l) > 0 {
		out = append(out, "above "+and(l)+" with its whole band")
	}
	if l := by[work.CannotTell]; len(l) > 0 {
		out = append(out, "cannot tell from "+and(l))
	}
	if l := by[work.Below]; len(l) > 0 {
		out = append(out, "below "+and(l)+" with its whole band")
	}
	return strings.Join(out, "; ")
}

// limits says to which activity each room for water is counted, by figure, from
// the criteria on file.
var limits = sync.OnceValue(func() map[string]string {
	out := map[string]string{}
	for _, c := range refdata.Criteria() {
		out[c.Figure] = quantity.Fixed(c.Activity, 2)
	}
	return out
})

// roomFor says how much water the product takes up before the limit its room is
// counted to, or by how much it is over; where the band holds both, it says that.
func roomFor(f *work.Figure) string {
	limit := limits()[f.ID]
	if f.Low < 0 && f.High >= 0 {
		return fmt.Sprintf("Whether there is room for water before %s cannot be told: %s g (%s) per 100 g.", limit, render.Value(f), render.Interval(f))
	}
	if f.Value < 0 {
		over := *f
		over.Value, over.Low, over.High = -f.Value, -f.High, -f.Low
		return fmt.Sprintf("Over by %s g (%s) of water per 100 g, counted to %s.", render.Value(&over), render.Interval(&over), limit)
	}
	return fmt.Sprintf("Room for %s g (%s) of water per 100 g before %s, mixed evenly.", render.Value(f), render.Interval(f), limit)
}

// oilAnswer is for products that oil surrounds: they have no one activity, but
// a measure of water they can dissolve.
func oilAnswer(a *levigate.Assessment) string {
	said := "Oil surrounds everything, so the product as a whole has no one water activity."
	has, can, room := a.Figures.Get("water.oil-dissolved"), a.Figures.Get("water.oil-capacity"), a.Figures.Get("water.oil-room")
	if has == nil || can == nil || has.State == work.Missing || can.State == work.Missing {
		return said
	}
	said += fmt.Sprintf(" It holds %s g (%s) of dissolved water per 100 g, of %s (%s) that it can dissolve.",
		render.Value(has), render.Interval(has), render.Value(can), render.Interval(can))
	if room != nil && room.State != work.Missing {
		said += fmt.Sprintf(" Room for water %s g (%s) per 100 g, then free drops at activity 1.", render.Value(room), render.Interval(room))
	}
	return said
}

func and(words []string) string {
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return strings.Join(words, "")
}
