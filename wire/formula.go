package wire

import (
	"levigate"
	"levigate/quantity"
)

// Formula is the formula that was checked, with what each line was found to
// mean.
type Formula struct {
	Code    string            `json:"code"`
	Name    string            `json:"name"`
	Product string            `json:"product"`
	Batch   *quantity.Decimal `json:"batch"` // g; null when not stated
	Total   quantity.Decimal  `json:"total"` // %, of all lines
	Markets []string          `json:"markets"`
	Claims  []string          `json:"claims"`
	Pack    string            `json:"pack"`
	Notes   string            `json:"notes"`
	Lines   []Line            `json:"lines"`
}

// Line is one line. Material is what was typed, Found what it means.
type Line struct {
	Phase    string           `json:"phase"`
	Material string           `json:"material"`
	Percent  quantity.Decimal `json:"percent"`
	QS       bool             `json:"qs"`
	Sits     string           `json:"sits,omitempty"`
	Found    *Found           `json:"found"` // null when nothing was found
}

// Found is the raw material behind a line.
type Found struct {
	Code     string   `json:"code"`
	Name     string   `json:"name"`
	Origin   string   `json:"origin"`
	Revision string   `json:"revision"`
	INCI     []string `json:"inci"`
}

func formulaOf(f *levigate.Formula) Formula {
	out := Formula{
		Code: f.Code, Name: f.Name, Product: f.Product, Total: f.Total(),
		Markets: list(f.Markets), Claims: list(f.Claims), Pack: f.Pack, Notes: f.Notes,
		Lines: each(f.Lines, lineOf),
	}
	if !f.Batch.IsZero() {
		out.Batch = &f.Batch
	}
	return out
}

func lineOf(l *levigate.Line) Line {
	out := Line{Phase: l.Phase, Material: l.Name, Percent: l.Percent, QS: l.QS, Sits: string(l.Sits)}
	if m := l.Match.Material; m != nil {
		out.Found = &Found{Code: m.Code, Name: m.Name, Origin: string(m.Origin), Revision: m.Revision(), INCI: []string{}}
		for _, s := range m.Declared {
			out.Found.INCI = append(out.Found.INCI, s.INCI)
		}
	}
	return out
}

func list(words []string) []string { return append([]string{}, words...) }
