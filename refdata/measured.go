package refdata

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"levigate/cite"
)

// Point is one measured water activity of a solution.
type Point struct {
	At       string // the row: "measured/scatchard1938.tsv:12"
	Table    string // the table alone: "scatchard1938"
	Parts    []Part // what is dissolved; the rest is water
	Celsius  float64
	Activity float64
	Method   string
	Mark     cite.Mark
	From     cite.Ref
}

// Part is one dissolved substance, under the name of its isotherm.
type Part struct {
	Substance string
	Share     float64 // g in 1 g of solution
}

// Water is the grams of water in one gram of solution.
func (p Point) Water() float64 {
	w := 1.0
	for _, part := range p.Parts {
		w -= part.Share
	}
	return w
}

// Of reports whether the point is of one substance alone in water.
func (p Point) Of(substance string) bool {
	return len(p.Parts) == 1 && p.Parts[0].Substance == substance
}

// Has reports whether a substance is among the dissolved ones.
func (p Point) Has(substance string) bool {
	return slices.ContainsFunc(p.Parts, func(q Part) bool { return q.Substance == substance })
}

// Measured lists every measured point on file, table by table. Honeys are
// among them, with the sugars of the mean honey.
func Measured() []Point { return slices.Clone(measured()) }

var measured = sync.OnceValue(func() []Point {
	var out []Point
	for _, name := range Names() {
		if !strings.HasPrefix(name, "measured/") {
			continue
		}
		t := mustOpen(name)
		for _, r := range t.Rows {
			p, ok, err := point(t, r)
			if err != nil {
				panic("refdata: " + err.Error())
			}
			if ok {
				out = append(out, p)
			}
		}
	}
	return out
})

// point reads a row of a table of solutions or of honeys; the tables of other
// things that share the folder give none.
func point(t *Table, r Row) (Point, bool, error) {
	p := Point{At: r.At(), Table: strings.TrimPrefix(t.Name, "measured/"), Mark: t.Card.Mark,
		From: cite.Ref{Key: t.Card.Source, At: t.Card.At}}
	var err error
	number := func(column string) float64 {
		v, e := r.Number(column)
		if e != nil && err == nil {
			err = e
		}
		return v
	}
	switch {
	case slices.Contains(t.Head, "mass_fraction") && slices.Contains(t.Head, "solute"):
		p.Method, p.Celsius = r.Text("method"), number("celsius")
		p.Parts = []Part{{r.Text("solute"), number("mass_fraction")}}
		if slices.Contains(t.Head, "solute2") {
			p.Parts = append(p.Parts, Part{r.Text("solute2"), number("mass_fraction2")})
		}
	case slices.Contains(t.Head, "honey"):
		p.Method, p.Celsius = "of many honeys", 25
		p.Parts = meanHoney(1 - number("water")/100)
	default:
		return Point{}, false, nil
	}
	p.Activity = number("activity")
	if err == nil && !(p.Activity > 0 && p.Activity < 1 && p.Water() > 0 && p.Water() < 1) {
		err = fmt.Errorf("%s: activity %g with %g g water in 1 g is no solution", r.At(), p.Activity, p.Water())
	}
	return p, true, err
}

// meanHoney shares out the solids of a honey over its sugars as in the mean
// honey; what is no sugar counts as more of the same.
func meanHoney(solids float64) []Part {
	t := mustOpen("measured/white1962")
	var parts []Part
	total := 0.0
	for _, r := range t.Rows {
		v, err := r.Number("share")
		if err != nil {
			panic("refdata: " + err.Error())
		}
		parts = append(parts, Part{r.Text("sugar"), v})
		total += v
	}
	for i := range parts {
		parts[i].Share *= solids / total
	}
	return parts
}
