package api

import (
	"net/http"
	"strings"

	"levigate"
	"levigate/internal/view"
	"levigate/quantity"
	"levigate/work"
	"levigate/work/render"
)

// formulaPage is one formula on one sheet.
type formulaPage struct {
	Code, Name string
	Facts      []string // product, batch, temperature, claims
	Answer     string
	Stops      []note // must be settled before release
	Strip      []stripFigure
	Table      table
	Charts     []view.Chart
	WaterNotes []note
	Held       []holding
	Declared   []declared
	Others     []opened
	Notes      string
	Cautions   string
}

// problemPage is a file that could not be read.
type problemPage struct {
	File     string
	Problems []string
	Helps    []string
}

func (s *Server) formula(w http.ResponseWriter, r *http.Request) {
	sheet, err := s.workshop.Sheet(r.Context(), r.PathValue("name"))
	if err != nil {
		s.fail(w, r, err)
		return
	}
	if sheet.Assessment == nil {
		s.render(w, r, http.StatusOK, "problems.html", sheet.File, problemsOf(sheet))
		return
	}
	page, err := pageOf(sheet)
	if err != nil {
		s.fail(w, r, err)
		return
	}
	s.render(w, r, http.StatusOK, "formula.html", page.Code+" "+page.Name, page)
}

func problemsOf(s *Sheet) problemPage {
	p := problemPage{File: s.File}
	for _, x := range s.Problems {
		p.Problems = append(p.Problems, x.String())
		p.Helps = append(p.Helps, x.Help)
	}
	return p
}

func pageOf(s *Sheet) (*formulaPage, error) {
	a := s.Assessment
	f := a.Formula
	p := &formulaPage{Code: f.Code, Name: f.Name, Answer: render.Tie(s.Answer), Notes: render.Tie(f.Notes), Cautions: s.Cautions}
	p.Facts = facts(a, s.Product)
	var err error
	if p.Strip, err = stripOf(a); err != nil {
		return nil, err
	}
	if p.Others, err = othersOf(a); err != nil {
		return nil, err
	}
	line, whole, water, stops := sortNotes(a)
	p.Stops = stops
	p.Table = tableOf(f, line, whole)
	p.WaterNotes = water
	p.Charts = view.Charts(a)
	p.Held = heldOf(a)
	p.Declared = declaredOf(a)
	return p, nil
}

func facts(a *levigate.Assessment, product string) []string {
	f := a.Formula
	out := []string{product}
	if !f.Batch.IsZero() {
		out = append(out, "batch "+f.Batch.String()+" g")
	} else {
		out = append(out, "no batch size stated; grams are for 100 g")
	}
	out = append(out, "at "+view.Degrees(a.Conditions.Temperature))
	if len(f.Claims) > 0 {
		out = append(out, "claims "+strings.Join(f.Claims, ", "))
	}
	return append(out, "no version frozen yet")
}

// holding is one row of what the formula truly holds.
type holding struct {
	Kind, Name  string
	Sign        view.Mark
	Grams, Band string
	Lines       string
	First       bool // of its kind
}

func heldOf(a *levigate.Assessment) []holding {
	var out []holding
	for _, h := range a.Composition.Held {
		if h.Grams.High == 0 {
			continue
		}
		x := holding{Kind: string(h.Kind), Sign: view.MarkOfKind(h.Kind), Name: h.Name, Lines: linesText(h.From)}
		x.Grams, x.Band = view.Ranged(h.Grams, quantity.GramPer100g)
		// The total water has a band of its own, narrower than the sum of the
		// lines' ends; one sheet says one thing.
		if f := a.Figures.Get("water.total"); h.Kind == levigate.Water && f != nil && f.State != work.Missing {
			x.Grams, x.Band = render.Value(f), render.Interval(f)
		}
		x.First = len(out) == 0 || out[len(out)-1].Kind != x.Kind
		out = append(out, x)
	}
	return out
}

// declared is one row of the composition as declared.
type declared struct{ INCI, Percent, Band, Lines string }

func declaredOf(a *levigate.Assessment) []declared {
	var out []declared
	for _, c := range a.Composition.Contained {
		d := declared{INCI: c.INCI, Lines: linesText(c.From)}
		d.Percent = quantity.Fixed(c.Percent.Typical, 3)
		if c.Percent.Low < c.Percent.High {
			d.Band = render.IntervalOf(c.Percent.Typical, c.Percent.Low, c.Percent.High, quantity.Percent)
		}
		out = append(out, d)
	}
	return out
}

// linesText names lines as a person counts.
func linesText(from []int) string {
	var out []string
	for _, i := range from {
		out = append(out, number(i))
	}
	return strings.Join(out, ", ")
}
