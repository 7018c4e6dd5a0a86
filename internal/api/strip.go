package api

import (
	"html/template"
	"math"
	"slices"
	"strings"

	"levigate"
	"levigate/internal/chart"
	"levigate/internal/view"
	"levigate/quantity"
	"levigate/work"
	"levigate/work/render"
)

// stripFigure is one of the five figures at the head of a sheet. It opens to
// its working.
type stripFigure struct {
	ID, Title   string
	Value, Unit string
	Band        string
	Evidence    string
	Note        string // what it is counted in, or why it is missing
	Missing     bool
	Whisker     template.HTML
	Working     template.HTML
	Says        string // the sentence read out
}

func stripOf(a *levigate.Assessment) ([]stripFigure, error) {
	var out []stripFigure
	for _, s := range []struct {
		title string
		of    func(*levigate.Assessment) (*work.Figure, chart.Whisker, string)
	}{{"Water", water}, {"Water activity", activity}, {"Room for water", room}, {"Crowding", crowding}, {"Density", density}} {
		f, axis, note := s.of(a)
		x := stripFigure{Title: s.title, Note: note, Missing: true, Value: render.None}
		if f == nil {
			x.Note = "not asked for"
			out = append(out, x)
			continue
		}
		working, err := render.WorkingHTML(f)
		if err != nil {
			return nil, err
		}
		x.ID, x.Working = strings.ReplaceAll(f.ID, ".", "-"), working
		x.Says = s.title + ": " + render.Sentence(f)
		if f.State == work.Missing {
			x.Note = strings.Join(f.Notes, "; ")
			out = append(out, x)
			continue
		}
		shown := *f
		if f.ID == "water.reserve" && f.High < 0 {
			// Room that is less than none is said the other way round.
			shown.Value, shown.Low, shown.High = -f.Value, -f.High, -f.Low
			x.Title = "Over by"
		}
		x.Missing = false
		x.Value, x.Unit = render.Value(&shown), strings.TrimSpace(render.Suffix(f.Unit))
		x.Band, x.Evidence = render.Interval(&shown), render.Evidence(f)
		x.Says = x.Title + " " + render.Value(&shown) + ", " + render.Sentence(&shown) + ", " + x.Evidence
		axis.Value, axis.Low, axis.High = shown.Value, shown.Low, shown.High
		x.Whisker = template.HTML(chart.DrawWhisker(axis))
		out = append(out, x)
	}
	return out, nil
}

func water(a *levigate.Assessment) (*work.Figure, chart.Whisker, string) {
	f := a.Figures.Get("water.total")
	wrote := writtenWater(a)
	w := axisTo(f, 5, 25, 100)
	w.Ticks = append(w.Ticks, chart.Tick{At: wrote, Text: "you wrote " + render.Plain(math.Round(wrote*10)/10)})
	return f, w, "per 100 g; you wrote " + quantity.Fixed(wrote, 1)
}

// writtenWater is what stands on the sheet as water: lines of water and nothing
// else. Water declared within a blend was written as the blend.
func writtenWater(a *levigate.Assessment) float64 {
	var sum float64
	for i := range a.Formula.Lines {
		l := &a.Formula.Lines[i]
		m := l.Match.Material
		if m == nil || len(m.Declared) == 0 {
			continue
		}
		if !slices.ContainsFunc(m.Declared, func(s levigate.Share) bool { return !s.IsWater() }) {
			sum += l.Percent.Float()
		}
	}
	return sum
}

func activity(a *levigate.Assessment) (*work.Figure, chart.Whisker, string) {
	return a.Figures.Get("water.activity"),
		chart.Whisker{Min: 0, Max: 1, Ticks: []chart.Tick{{At: 0, Text: "0"}, {At: 0.6, Text: "0.60"}, {At: 1, Text: "1"}}},
		"at " + view.Degrees(a.Conditions.Temperature) + ", mixed evenly"
}

// room is the room for water; for a product that oil surrounds, what its oils
// can still dissolve.
func room(a *levigate.Assessment) (*work.Figure, chart.Whisker, string) {
	f := a.Figures.Get("water.reserve")
	if oil := a.Figures.Get("water.oil-room"); oil != nil && oil.State != work.Missing {
		return oil, axisTo(oil, 1, 5, 25), "then free drops at activity 1"
	}
	note := "before 0.60"
	if f != nil && f.High < 0 {
		note = "counted to 0.60"
	}
	if next := a.Figures.Get("water.reserve-075"); next != nil && next.State != work.Missing && next.Value > 0 {
		note += "; " + render.Value(next) + " g before 0.75"
	}
	return f, axisTo(f, 20, 100, 1000), note
}

func crowding(a *levigate.Assessment) (*work.Figure, chart.Whisker, string) {
	f := a.Figures.Get("structure.internal-fraction")
	w := chart.Whisker{Min: 0, Max: 1, Ticks: []chart.Tick{{At: 0, Text: "0"}, {At: 1, Text: "1"}}}
	return f, w, "oil share by volume"
}

func density(a *levigate.Assessment) (*work.Figure, chart.Whisker, string) {
	return a.Figures.Get("structure.density"),
		chart.Whisker{Min: 0.8, Max: 1.6, Ticks: []chart.Tick{{At: 0.8, Text: "0.8"}, {At: 1, Text: "1"}, {At: 1.6, Text: "1.6"}}}, "no air"
}

// axisTo takes the first of three fixed axes from 0 that holds the figure.
func axisTo(f *work.Figure, ends ...float64) chart.Whisker {
	end := ends[len(ends)-1]
	for _, e := range ends {
		if f != nil && max(f.High, -f.Low) <= e {
			end = e
			break
		}
	}
	return chart.Whisker{Min: 0, Max: end, Ticks: []chart.Tick{{At: 0, Text: "0"}, {At: end, Text: render.Plain(end)}}}
}
