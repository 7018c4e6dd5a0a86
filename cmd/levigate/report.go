package main

import (
	"fmt"
	"io"
	"strings"

	"levigate"
	"levigate/internal/program"
	"levigate/quantity"
	"levigate/work"
	"levigate/work/render"
)

// report prints one formula check as text.
type report struct {
	io.Writer
	ink     ink
	working bool
	curves  bool
}

func newReport(out io.Writer, c *assessCommand) report {
	return report{Writer: out, ink: inkFor(out), working: c.Working, curves: c.Curves}
}

const width = render.Width

func (r report) print(a *levigate.Assessment) {
	r.title(a)
	if said := program.Answer(a); said != "" {
		fmt.Fprint(r, "\n"+render.Prose(said, width, "", ""))
	}
	r.stops(a)
	r.figures(a)
	r.water(a)
	r.declared(a)
	if r.curves {
		r.moistureCurve(a)
	}
	if r.working {
		r.workings(a)
	}
	r.findings(a)
	fmt.Fprint(r, "\n"+render.Prose(program.Cautions(a), width, "", ""))
}

func (r report) title(a *levigate.Assessment) {
	at := render.Plain(a.Conditions.Temperature) + " °C"
	fmt.Fprintln(r, r.ink.bold(headline(a.Formula))+" · formula check at "+at)
}

func (r report) head(text string) { fmt.Fprintf(r, "\n%s\n", r.ink.bold(text)) }

// figures lists every figure; what is missing says why.
func (r report) figures(a *levigate.Assessment) {
	r.head("Figures")
	t := work.Table{Head: []string{"", "", "", "", ""}}
	var missing [][2]string
	for _, f := range render.Worth(a.Figures) {
		if f.State == work.Missing {
			missing = append(missing, [2]string{f.Title, strings.Join(f.Notes, "; ")})
			continue
		}
		t.Rows = append(t.Rows, []string{f.Title, render.Value(f), strings.TrimSpace(render.Suffix(f.Unit)), "(" + render.Interval(f) + ")", render.Evidence(f)})
	}
	_, rows, _ := strings.Cut(render.Table(&t, width, "  "), "\n")
	fmt.Fprint(r, rows)
	// Figures that are missing for one reason say it once.
	for i, m := range missing {
		if i+1 < len(missing) && missing[i+1][1] == m[1] {
			missing[i+1][0] = m[0] + ", " + missing[i+1][0]
			continue
		}
		fmt.Fprint(r, render.Prose(m[0]+": "+render.None+" "+m[1], width, "  ", "    "))
	}
}

// water lists what each line brings of water, largest first.
func (r report) water(a *levigate.Assessment) {
	lines := program.WaterByLine(a)
	if len(lines) == 0 {
		return
	}
	r.head("Water it truly holds, g per 100 g")
	t := work.Table{Head: []string{"line", "raw material", "brings", "between"}}
	for _, b := range lines {
		value, between := ranged(b.Grams, 2)
		t.Rows = append(t.Rows, []string{fmt.Sprint(b.Line), b.Material, value, between})
	}
	fmt.Fprint(r, render.Table(&t, width, "  "))
}

// declared lists the composition by weight as added.
func (r report) declared(a *levigate.Assessment) {
	r.head("Composition as declared, %")
	t := work.Table{Head: []string{"INCI name", "%", "between", "lines"}}
	for _, c := range a.Composition.Contained {
		value, between := ranged(c.Percent, 3)
		t.Rows = append(t.Rows, []string{c.INCI, value, between, lines(c.From)})
	}
	fmt.Fprint(r, render.Table(&t, width, "  "))
}

// workings opens every figure.
func (r report) workings(a *levigate.Assessment) {
	r.head("Workings")
	for _, f := range render.Worth(a.Figures) {
		fmt.Fprint(r, "\n"+render.Text(f, width))
	}
}

// moistureCurve prints the curve at round activities, with its band.
func (r report) moistureCurve(a *levigate.Assessment) {
	for i := range a.Curves {
		c := &a.Curves[i]
		if c.ID != "water.isotherm" {
			continue
		}
		r.head("Moisture curve: water that 100 g of the formula hold")
		t := work.Table{Head: []string{"at activity", "g/100 g", "between"}}
		for j := 4; j < len(c.X.Values); j += 5 {
			v, lo, hi := quantity.Shown(c.Y.Values[j], c.Low[j], c.High[j], quantity.GramPer100g)
			t.Rows = append(t.Rows, []string{quantity.Fixed(c.X.Values[j], 2), v, lo + "–" + hi})
		}
		fmt.Fprint(r, render.Table(&t, width, "  "))
	}
}

// ranged prints a range with n decimals; the ends are left out where there is
// no doubt.
func ranged(v levigate.Range, n int) (value, between string) {
	value = quantity.Fixed(v.Typical, n)
	if low, high := quantity.Fixed(v.Low, n), quantity.Fixed(v.High, n); low != high {
		between = low + "–" + high
	}
	return value, between
}

// lines names lines as a person counts.
func lines(from []int) string {
	var out []string
	for _, i := range from {
		out = append(out, fmt.Sprint(i+1))
	}
	return strings.Join(out, ", ")
}
