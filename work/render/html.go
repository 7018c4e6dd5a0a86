package render

import (
	_ "embed"
	"html/template"
	"strings"

	"levigate/quantity"
	"levigate/work"
)

//go:embed figure.html
var figureHTML string

var pages = template.Must(template.New("figure").Funcs(template.FuncMap{
	"value":    Value,
	"suffix":   Suffix,
	"interval": Interval,
	"evidence": Evidence,
	"answer":   answer,
	"settle":   Settle,
	"result":   result,
	"graded":   graded,
	"numbers":  numbers,
	"number":   inputValue,
	"id":       func(f *work.Figure) string { return "working-" + strings.ReplaceAll(f.ID, ".", "-") },
	"causes": func(f *work.Figure) any {
		t, left := causes(f)
		t.Head[0] = "cause" // the heading above says the rest
		return struct {
			Table *work.Table
			Left  int
		}{&t, left}
	},
	"once":       once,
	"working":    func(f *work.Figure) *work.Step { return pruned(f.Working, f.Sources) },
	"numeric":    func(t *work.Table, column int) bool { return isNumeric(t, column) },
	"calculated": calculated,
}).Parse(figureHTML))

// HTML is a figure with its working as a fragment of a page: a section with
// headings, tables and lists, and no looks of its own.
func HTML(f *work.Figure) (template.HTML, error) {
	var b strings.Builder
	if err := pages.ExecuteTemplate(&b, "figure", f); err != nil {
		return "", err
	}
	return template.HTML(b.String()), nil
}

// WorkingHTML is the fragment without the heading, for a page that shows the
// value itself.
func WorkingHTML(f *work.Figure) (template.HTML, error) {
	var b strings.Builder
	if err := pages.ExecuteTemplate(&b, "working", f); err != nil {
		return "", err
	}
	return template.HTML(b.String()), nil
}

// calculated is the model's answer beside a reading that took its place.
func calculated(f *work.Figure) string {
	c := f.Calculated
	v, _, _ := quantity.Shown(c.Value, c.Low, c.High, f.Unit)
	return Minus(v) + " (" + IntervalOf(c.Value, c.Low, c.High, f.Unit) + ")"
}
