package program

import (
	"context"
	"math/big"
	"strings"
	"sync"

	"levigate"
	"levigate/internal/api"
	"levigate/internal/assess"
	"levigate/internal/sheet"
	"levigate/internal/view"
	"levigate/quantity"
	"levigate/wire"
)

// checkedDraft is one check, as it was made and as everyone sees it.
type checkedDraft struct {
	sheet *sheet.Sheet
	made  *levigate.Assessment
	wire  *wire.Check
}

// asked refuses what no check can be made for, before anything is changed.
func (b *Bench) asked(ask api.Ask) error {
	if ask.Temperature == nil {
		return nil
	}
	in := Input{Conditions: levigate.Conditions{Temperature: *ask.Temperature}}
	return in.check()
}

// check reads a draft's document and checks what can be read of it.
func (b *Bench) check(ctx context.Context, d *levigate.Draft, ask api.Ask) (*checkedDraft, error) {
	if err := b.asked(ask); err != nil {
		return nil, err
	}
	s := sheet.Read(&d.Document)
	s.Resolve(b.lib)
	conditions := room()
	if t := s.Temperature; t != nil && *t >= Coldest && *t <= Warmest {
		conditions.Temperature = *t
	} else if t != nil {
		s.Problems = append(s.Problems, sheet.Problem{List: "head", Field: "temperature", Text: "temperature is " + view.Degrees(*t) + ", outside what can be checked",
			Help: "name one from −15 to 60 °C; until then the check is for " + view.Degrees(levigate.Room)})
	}
	if ask.Temperature != nil {
		conditions.Temperature = *ask.Temperature
	}
	inForce, err := b.inForce(ctx, s.Formula)
	if err != nil {
		return nil, err
	}
	a := assess.Check(assess.Request{Formula: s.Formula, Library: b.lib, Conditions: conditions, Readings: inForce,
		Curves: ask.Curves, Working: ask.Working != "", Unread: s.Names()})
	return &checkedDraft{s, a, b.shown(s, a, d.Revision, ask)}, nil
}

// shown is a check by the rows of its document.
func (b *Bench) shown(s *sheet.Sheet, a *levigate.Assessment, revision int64, ask api.Ask) *wire.Check {
	f := s.Formula
	out := &wire.Check{
		Revision: revision, Total: f.Total().Fixed(2), Rows: append([]string{}, s.Rows...), Answer: Answer(a),
		Problems: []wire.CellProblem{}, Lines: linesShown(s), Strip: view.Strip(a), Limits: limits(), Assessment: wire.Of(a, "", b.program.Made()),
		Margin: margin(s, a), Curves: []wire.Chart{},
	}
	if over := f.Total().Sub(quantity.Hundred); !over.Negative() && !over.IsZero() {
		out.Over = over.Fixed(2)
	}
	for i := range f.Lines {
		if f.Lines[i].QS {
			out.QS = &wire.QS{Row: s.Rows[i], Percent: f.Lines[i].Percent.Fixed(2)}
		}
	}
	for _, p := range s.Problems {
		out.Problems = append(out.Problems, wire.CellProblem(p))
	}
	for i := range out.Assessment.Figures {
		// One working was asked for; the others stay where they are made.
		if fig := &out.Assessment.Figures[i]; fig.Working != nil {
			if fig.ID == ask.Working {
				out.Working = fig.Working
			}
			fig.Working = nil
		}
	}
	if ask.Curves {
		for _, c := range view.Charts(a) {
			out.Curves = append(out.Curves, wire.Chart{ID: c.ID, Title: c.Title, Sentence: c.Says, SVG: string(c.Wide), Narrow: string(c.Narrow), Table: wire.Table{Head: c.Head, Rows: c.Rows}})
		}
	}
	return out
}

func linesShown(s *sheet.Sheet) map[string]wire.LineShown {
	out := map[string]wire.LineShown{}
	batch := s.Formula.Batch
	if batch.IsZero() {
		batch = quantity.Hundred
	}
	perCent := new(big.Rat).Quo(batch.Exact(), quantity.Hundred.Exact())
	for i := range s.Formula.Lines {
		l := &s.Formula.Lines[i]
		x := lineShown(&l.Match)
		x.Percent, x.Grams = l.Percent.Fixed(2), quantity.Round(new(big.Rat).Mul(l.Percent.Exact(), perCent), 2).Fixed(2)
		out[s.Rows[i]] = x
	}
	for _, u := range s.Unread {
		out[u.Row] = lineShown(&u.Match)
	}
	return out
}

func lineShown(match *levigate.Match) wire.LineShown {
	m := match.Material
	if m == nil {
		return wire.LineShown{INCI: []string{}, Kind: string(view.Other), Nearest: append([]string{}, match.Nearest...)}
	}
	return wire.LineShown{Nearest: []string{}, Code: m.Code, Name: m.Name, INCI: wire.INCIOf(m), Function: strings.Join(m.Role, ", "), Kind: string(view.MarkOf(m))}
}

// unopened is the rule that names what could not be opened; of a line whose
// cell says so already it would say it twice.
const unopened = "C02"

func margin(s *sheet.Sheet, a *levigate.Assessment) []wire.Note {
	out := []wire.Note{}
	for _, n := range view.Notes(a) {
		if n.Rule == unopened && len(n.Lines) > 0 {
			continue
		}
		x := wire.Note{Rule: n.Rule, Severity: string(n.Finding.Severity), Verdict: string(n.Verdict), Rows: []string{},
			Figures: append([]string{}, n.Figures...), Text: n.Text, Help: n.Help, Needs: n.Needs}
		for _, i := range n.Lines {
			if i < len(s.Rows) {
				x.Rows = append(x.Rows, s.Rows[i])
			}
		}
		out = append(out, x)
	}
	return out
}

// remembering keeps what a name that means nothing comes near to: looking
// through every name is slow, and the cell she is typing in is checked at each
// key.
type remembering struct {
	levigate.Library
	mu     sync.Mutex
	misses map[string]levigate.Match
}

// mostMisses is far above the names anybody mistypes in a day.
const mostMisses = 5_000

// Find looks a name up.
func (r *remembering) Find(name string, own []*levigate.Material) levigate.Match {
	if len(own) > 0 {
		return r.Library.Find(name, own)
	}
	r.mu.Lock()
	m, known := r.misses[name]
	r.mu.Unlock()
	if known {
		return m
	}
	if m = r.Library.Find(name, nil); m.Material == nil {
		r.mu.Lock()
		defer r.mu.Unlock()
		if r.misses == nil || len(r.misses) >= mostMisses {
			r.misses = map[string]levigate.Match{}
		}
		r.misses[name] = m
	}
	return m
}
