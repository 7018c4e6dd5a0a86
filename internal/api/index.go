package api

import (
	"net/http"

	"levigate"
	"levigate/internal/view"
	"levigate/work/render"
)

// entry is one formula in the list.
type entry struct {
	Name, Code, Title, Product string
	Activity, Band             string
	Findings                   string
	Problem                    string
}

// indexPage is the list, and whether its formulas are made up.
type indexPage struct {
	Demo    bool
	Entries []entry
}

func (s *Server) index(w http.ResponseWriter, r *http.Request) {
	sheets, err := s.workshop.Sheets(r.Context())
	if err != nil {
		s.fail(w, r, err)
		return
	}
	entries := make([]entry, len(sheets))
	for i := range sheets {
		entries[i] = entryOf(&sheets[i])
	}
	s.render(w, r, http.StatusOK, "index.html", "Formulas", indexPage{s.workshop.Demo(), entries})
}

func entryOf(s *Sheet) entry {
	e := entry{Name: s.Name, Code: s.Name}
	if s.Assessment == nil {
		e.Title, e.Problem = s.File, "could not be read"
		return e
	}
	a := s.Assessment
	e.Code, e.Title, e.Product = a.Formula.Code, a.Formula.Name, s.Product
	e.Activity = render.None
	if f := a.Figures.Get("water.activity"); f != nil {
		e.Activity, e.Band = render.Value(f), render.Interval(f)
	}
	e.Findings = tally(a.Findings)
	return e
}

// tally counts findings in words, the gravest first.
func tally(findings []levigate.Finding) string {
	n := map[string]int{}
	for i := range findings {
		n[view.SeverityOf(&findings[i]).Word]++
	}
	out := ""
	for _, c := range []struct{ word, said string }{
		{"Stop", " to settle before release"}, {"Answer", " to answer"}, {"Cannot tell", " cannot be told yet"}, {"Advice", " of advice"},
	} {
		if k := n[c.word]; k > 0 {
			if out != "" {
				out += ", "
			}
			out += count(k) + c.said
		}
	}
	if out == "" {
		return "no findings"
	}
	return out
}
