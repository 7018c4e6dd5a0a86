package program

import (
	"context"
	"io/fs"
	"sync"

	"levigate"
	"levigate/examples"
	"levigate/work"
	"levigate/work/render"
)

// explainFigure tells what a figure is and by which method it comes about. A
// specimen is that figure in one of the demo formulas; a curve has none.
func explainFigure(id, part string, specimen *work.Figure) Explanation {
	x := Explanation{Kind: "figure", ID: id, Title: id}
	if specimen == nil {
		x.Sections = []Section{{Text: "Given by the part " + part + " of a formula check, as a curve or where the product calls for it."}}
		return x
	}
	x.Title = specimen.Title
	unit := string(specimen.Unit)
	if render.Suffix(specimen.Unit) == "" {
		unit = "a plain number"
	}
	x.Sections = append(x.Sections, Section{Text: "A figure of the part " + part + " of a formula check, in " + unit + ". Its band holds nine times in ten."})
	if specimen.Method != nil {
		m := explainMethod(specimen.Method)
		x.Sections = append(x.Sections, Section{Head: "Method", Text: m.Title + " (" + m.ID + ")"})
		x.Sections = append(x.Sections, m.Sections...)
	}
	return x
}

// specimens checks the demo formulas once and keeps the first figure of each
// id, so that explain names the method that was truly used.
func (p *Program) specimens() map[string]*work.Figure { return specimens() }

var specimens = sync.OnceValue(func() map[string]*work.Figure {
	out := map[string]*work.Figure{}
	p := New()
	names, _ := fs.Glob(examples.Files, "*.formula.yaml")
	in := Input{Conditions: levigate.Conditions{Temperature: levigate.Room, Humidity: 60}}
	for _, name := range names {
		data, err := fs.ReadFile(examples.Files, name)
		if err != nil {
			continue
		}
		in.Files = append(in.Files, File{Name: name, Data: data})
	}
	outcomes, err := p.Assess(context.Background(), in)
	if err != nil {
		return out
	}
	for _, o := range outcomes {
		if o.Assessment == nil {
			continue
		}
		for i := range o.Assessment.Figures {
			f := &o.Assessment.Figures[i]
			if old := out[f.ID]; old == nil || old.State == work.Missing {
				out[f.ID] = f
			}
		}
	}
	return out
})
