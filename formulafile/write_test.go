package formulafile

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"levigate"
	"levigate/cite"
	"levigate/quantity"
)

// comesBack writes a formula, reads what was written and compares.
func comesBack(t interface {
	Helper()
	Fatalf(string, ...any)
}, f *levigate.Formula) {
	t.Helper()
	data := Write(f)
	again, problems := Read("written", data)
	if len(problems) > 0 {
		t.Fatalf("what was written can't be read:\n%s\n%s", Format(problems, "written"), data)
	}
	if !reflect.DeepEqual(placeless(f), placeless(again)) {
		t.Fatalf("not the same after writing and reading:\n%s\n%s", data, Write(again))
	}
}

// placeless is the formula without the places of what stands in it, which writing
// changes.
func placeless(f *levigate.Formula) levigate.Formula {
	g := *f
	g.Lines = append([]levigate.Line{}, f.Lines...)
	for i := range g.Lines {
		g.Lines[i].Place = levigate.Place{}
	}
	g.Materials = nil
	for _, m := range f.Materials {
		c := *m
		c.Place = levigate.Place{}
		g.Materials = append(g.Materials, &c)
	}
	return g
}

// Any formula that the file can hold comes back, whatever its texts are.
func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { comesBack(t, someFormula(t)) })
}

func TestOrderAndDigits(t *testing.T) {
	const text = `levigate: formula/1
code: "007"
name: "Gel: the second, with # and no"
product: bath
lines:
  - {phase: A, material: "Glycerin, vegetable", percent: 26.5}
  - {phase: B, material: Kaolin, qs: true, sits: oil}
materials:
  - name: "yes"
    density: 1.26 g/mL
    composition:
      - {inci: Kaolin, percent: 100, low: 99, high: 100}
    water: {percent: 1}
    isotherm: {gab: [0.005, 50, 0.85]}
making:
  - step: 1
    text: |
      Stir.

      Rest.
    temperature: 60
    minutes: 90
batch: 5000 g
markets: [eu]
claims: [low-water]
use: {area: [hands], eye: false, spray: false, under-3: false}
pack: T-75
notes: "a \"quoted\" word"
`
	if got := string(Write(read(t, text))); got != text {
		t.Errorf("got\n%s\nwant\n%s", got, text)
	}
}

// Texts that a YAML reader takes for something else when they are bare.
var traps = []string{
	"yes", "No", "null", "~", "true", ".inf", "1e3", "0x1F", "012", "1_000", "2024-01-31", "12:30", "- a", "-a", "a: b", "a:", ":a",
	"a #b", "#a", "&a", "*a", "!a", "|", ">", "%a", "@a", "`a", "'a'", `"a"`, `a\b`, "[a", "a]", "{a", "a}", "a,b", "a, b", "<<", "=", "?", "? a",
	"---", "...", "--- a", "a\nb", "a\n\n  b\n c", "a\n- b\n# c", " a", "a ", "a\tb", "\ta", "é", "甘油", "🙂", "a\u00a0b", "a\n\u00a0b", "a\n \u3000b", "0", "7", "1.5", "+1", "a\\", "a'", "µm",
}

func someText(max int, lines bool) *rapid.Generator[string] {
	free := rapid.StringOfN(rapid.OneOf(rapid.RuneFrom([]rune("aB9 -:#,.'\"\\{}[]&*!|>%@é水\n\t")), rapid.Rune()), 1, 12, -1)
	return rapid.Custom(func(t *rapid.T) string {
		s := rapid.OneOf(free, rapid.SampledFrom(traps)).Draw(t, "text")
		s = strings.Map(func(c rune) rune {
			if c == '\uFFFD' || c != '\n' && c != '\t' && hidden(c) != "" || c == '\n' && !lines {
				return 'x'
			}
			return c
		}, s)
		if s = tidy(s); s == "" {
			s = "x"
		}
		return s
	})
}

func someDecimal(most int64) *rapid.Generator[quantity.Decimal] {
	return rapid.Custom(func(t *rapid.T) quantity.Decimal {
		return millionths(rapid.Int64Range(0, most*1e6).Draw(t, "millionths"))
	})
}

// millionths is n / 1,000,000 in the form that reading gives it.
func millionths(n int64) quantity.Decimal {
	d, fault, _ := exact(fmt.Sprintf("%d.%06d", n/1e6, n%1e6))
	if fault != "" {
		panic(fault)
	}
	return d
}

func someRange(t *rapid.T, typical int64) levigate.Range {
	r := levigate.Exactly(millionths(typical).Float())
	if rapid.Bool().Draw(t, "wide") {
		r.Low = millionths(rapid.Int64Range(0, typical).Draw(t, "low")).Float()
		r.High = millionths(rapid.Int64Range(typical, 100e6).Draw(t, "high")).Float()
	}
	return r
}

func maybe[T any](t *rapid.T, g *rapid.Generator[T]) (v T) {
	if rapid.Bool().Draw(t, "given") {
		v = g.Draw(t, "value")
	}
	return v
}

func someWords() *rapid.Generator[[]string] {
	return rapid.SliceOfNDistinct(rapid.StringMatching(`[a-z0-9]{1,8}(-[a-z0-9]{1,8})?`), 1, 3, rapid.ID[string])
}

func someSits() *rapid.Generator[levigate.Sits] {
	return rapid.SampledFrom([]levigate.Sits{"", levigate.InOil, levigate.InPolyol, levigate.Grain})
}

func someFormula(t *rapid.T) *levigate.Formula {
	name, prose := someText(MaxName, false), someText(MaxText, true)
	f := &levigate.Formula{
		Code: name.Draw(t, "code"), Name: name.Draw(t, "name"), Product: rapid.SampledFrom(levigate.Products).Draw(t, "product"),
		Batch: maybe(t, rapid.Map(rapid.Int64Range(1, 1e12), millionths)), Markets: maybe(t, someWords()), Claims: maybe(t, someWords()),
		Use:  levigate.Use{Area: maybe(t, someWords()), Eye: rapid.Bool().Draw(t, "eye"), Spray: rapid.Bool().Draw(t, "spray"), Under3: rapid.Bool().Draw(t, "under 3")},
		Pack: maybe(t, name), Notes: maybe(t, prose),
	}
	qs := rapid.IntRange(-1, 4).Draw(t, "qs")
	for i := range rapid.IntRange(1, 5).Draw(t, "lines") {
		l := levigate.Line{Phase: maybe(t, name), Name: name.Draw(t, "material"), Sits: someSits().Draw(t, "sits"), QS: i == qs}
		if !l.QS {
			l.Percent = someDecimal(60).Draw(t, "percent")
		}
		f.Lines = append(f.Lines, l)
	}
	for i := range rapid.IntRange(0, 2).Draw(t, "materials") {
		f.Materials = append(f.Materials, someMaterial(t, fmt.Sprintf("own %d", i)))
	}
	for range rapid.IntRange(0, 2).Draw(t, "steps") {
		s := levigate.Step{Number: maybe(t, name), Phase: maybe(t, name), Text: prose.Draw(t, "step"), HasTemp: rapid.Bool().Draw(t, "warm")}
		if s.HasTemp {
			s.Temperature = millionths(rapid.Int64Range(0, 300e6).Draw(t, "temperature")).Float()
		}
		s.Minutes = millionths(rapid.Int64Range(0, 9e6).Draw(t, "minutes")).Float()
		f.Making = append(f.Making, s)
	}
	f.FillUp()
	return f
}

func someMaterial(t *rapid.T, name string) *levigate.Material {
	text := someText(MaxName, false)
	m := &levigate.Material{Name: name, Origin: levigate.OfFormula, Sits: someSits().Draw(t, "sits"), Source: maybe(t, text), Grade: cite.Grade(rapid.IntRange(0, len(grades)-1).Draw(t, "grade"))}
	m.Form = form(m.Sits)
	if rapid.Bool().Draw(t, "dense") {
		m.Density = levigate.Exactly(float64(rapid.IntRange(100, 9999).Draw(t, "density")) / 1000)
	}
	if rapid.Bool().Draw(t, "wet") {
		m.Water = someRange(t, rapid.Int64Range(1, 100e6).Draw(t, "water"))
	}
	left := int64(100e6)
	for left > 0 {
		part := left
		if len(m.Declared) < 3 {
			part = rapid.Int64Range(1, left).Draw(t, "share")
		}
		m.Declared = append(m.Declared, levigate.Share{INCI: text.Draw(t, "inci"), Percent: someRange(t, part)})
		left -= part
	}
	switch thousandth := rapid.IntRange(1, 990).Draw(t, "k"); rapid.IntRange(0, 3).Draw(t, "isotherm") {
	case 1:
		m.Isotherm = &levigate.Isotherm{Name: name, Model: levigate.GAB, M0: float64(thousandth) / 1e4, C: 12.5, K: float64(thousandth) / 1000}
	case 2:
		m.Isotherm = &levigate.Isotherm{Name: name, Model: levigate.Linear, AtOne: levigate.Exactly(float64(thousandth) / 1e5)}
	case 3:
		m.Isotherm = &levigate.Isotherm{Name: text.Draw(t, "like")}
	}
	if m.Isotherm != nil {
		m.Isotherm.Grade = m.Grade
	}
	return m
}
