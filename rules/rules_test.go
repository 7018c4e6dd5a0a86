package rules

import (
	"slices"
	"strings"
	"testing"

	"levigate"
	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

func TestEveryRule(t *testing.T) {
	if len(All()) < 12 {
		t.Fatalf("only %d rules are registered", len(All()))
	}
	names := map[string]string{}
	for _, r := range All() {
		if other, twice := names[r.Name]; twice {
			t.Errorf("%s and %s are both called %s", other, r.ID, r.Name)
		}
		names[r.Name] = r.ID
		t.Run(r.ID, func(t *testing.T) {
			for _, fault := range faults(r) {
				t.Error(fault)
			}
		})
	}
}

// good is the smallest rule without a fault; each bad one changes one thing.
func good() Rule {
	return Rule{
		ID: "C99", Name: "too-much", Title: "Too much of it", Why: "because", Since: "0.1",
		Severity: levigate.Warn, Sources: []cite.Ref{{Key: "trade-practice"}}, Compares: Exact,
		Messages: map[string]Message{"much": {Text: "{name} has {share:1} %."}},
		Check: func(s *Subject, r *Report) {
			if s.Grams(0) > 10 {
				r.Broken(Note{Say: "much", At: []string{atLine(0)}, Args: Args{"name": s.Name(0), "share": s.Grams(0)}})
			}
		},
		Examples: []Example{
			{Name: "over", Given: sheet(line("11", "Clay")), Want: "C99 warn: Clay has 11.0 %.\n  at: lines/0\n", Shows: Over},
			{Name: "on", Given: sheet(line("10", "Clay")), Shows: On},
			{Name: "under", Given: sheet(line("9", "Clay")), Shows: Under},
		},
	}
}

func TestTheProofAcceptsAGoodRule(t *testing.T) {
	r := good()
	if f := faults(&r); len(f) > 0 {
		t.Fatal(f)
	}
}

func TestTheProofRejects(t *testing.T) {
	for name, c := range map[string]struct {
		change func(r *Rule)
		want   []string
	}{
		"no title":              {func(r *Rule) { r.Title = "" }, []string{"title"}},
		"no why":                {func(r *Rule) { r.Why = "" }, []string{"why"}},
		"no since":              {func(r *Rule) { r.Since = "" }, []string{"since"}},
		"a number of another":   {func(r *Rule) { r.ID = "X1" }, []string{"is no number"}},
		"no source":             {func(r *Rule) { r.Sources = nil }, []string{"source is needed"}},
		"an invented source":    {func(r *Rule) { r.Sources = []cite.Ref{{Key: "nobody1999"}} }, []string{"nobody1999"}},
		"an invented limit":     {func(r *Rule) { r.Limits = []string{"limits/criteria water.reserve-099"} }, []string{"names no row"}},
		"an invented cause":     {func(r *Rule) { r.After = []string{"C98"} }, []string{"C98"}},
		"a stop on nothing":     {func(r *Rule) { r.Severity = levigate.Stop }, []string{"rests on arithmetic"}},
		"another severity":      {func(r *Rule) { r.Severity = "fatal" }, []string{"fatal"}},
		"an argument too many":  {func(r *Rule) { r.Messages["much"] = Message{Text: "{name}"} }, []string{"share", "does not use"}},
		"an argument too few":   {func(r *Rule) { r.Messages["much"] = Message{Text: "{name} {share:1} {phase}"} }, []string{"{phase}", "not handed in"}},
		"an unknown message":    {func(r *Rule) { delete(r.Messages, "much") }, []string{`no message "much"`}},
		"a message never said":  {func(r *Rule) { r.Messages["idle"] = Message{Text: "x"} }, []string{"no example says message idle"}},
		"a message of nothing":  {func(r *Rule) { r.Messages["much"] = Message{Help: "{name} {share}"} }, []string{"has no text"}},
		"a promise in the help": {func(r *Rule) { r.Messages["much"] = Message{Text: "{name} {share}", Help: "then it is safe"} }, []string{`"safe"`}},
		"a promise in the why":  {func(r *Rule) { r.Why = "so that the product is self-preserving" }, []string{`"self-preserving"`}},
		"a promise handed in": {func(r *Rule) {
			r.Examples[0].Given = sheet(line("11", "Compliant clay"))
		}, []string{`says "compliant"`}},
		"one word of difference": {func(r *Rule) { r.Examples[0].Want = "C99 warn: Clay has 11 %.\n" }, []string{"want"}},
		"always silent":          {func(r *Rule) { r.Check = func(*Subject, *Report) {} }, []string{"one that is silent"}},
		"no side over":           {func(r *Rule) { r.Examples[0].Shows = "" }, []string{"from over"}},
		"no side on":             {func(r *Rule) { r.Examples[1].Shows = "" }, []string{"from on"}},
		"no straddling side":     {func(r *Rule) { r.Compares = Banded }, []string{"from straddles"}},
		"both sides alike":       {func(r *Rule) { r.Examples[1].Shows, r.Examples[0].Shows = Over, On }, []string{"over the limit it answers"}},
	} {
		r := good()
		c.change(&r)
		if f := faults(&r); !has(f, c.want...) {
			t.Errorf("%s: want a fault with %q, got %q", name, c.want, f)
		}
	}
}

func TestNumbersAreNotUsedAgain(t *testing.T) {
	r := good()
	if err := admit(map[string]*Rule{"C99": {Name: "older"}}, nil, &r); err == nil || !strings.Contains(err.Error(), "taken by older") {
		t.Errorf("a number in use: %v", err)
	}
	if err := admit(map[string]*Rule{}, map[string]string{"C99": "0.2, never right"}, &r); err == nil || !strings.Contains(err.Error(), "retired") {
		t.Errorf("a retired number: %v", err)
	}
	for id := range retired {
		if _, both := registered[id]; both {
			t.Errorf("%s is retired and registered", id)
		}
	}
	defer func() {
		if recover() == nil {
			t.Error("registering C01 again does not panic")
		}
	}()
	register(Rule{ID: "C01"})
}

// A stop must rest on arithmetic or on a limit row that was read, and on a clear
// answer.
func TestStopsThatDoNotRest(t *testing.T) {
	stop := &Rule{Severity: levigate.Stop}
	sum := &Rule{Severity: levigate.Stop, Arithmetic: true}
	read, recalled := Note{Mark: cite.Read}, Note{Mark: cite.FromMemory}
	for _, c := range []struct {
		rule    *Rule
		verdict levigate.Verdict
		note    Note
		want    levigate.Severity
	}{
		{sum, levigate.Broken, Note{}, levigate.Stop},
		{stop, levigate.Broken, read, levigate.Stop},
		{stop, levigate.Broken, recalled, levigate.Warn},
		{stop, levigate.Broken, Note{Mark: cite.CommonPractice}, levigate.Warn},
		{stop, levigate.CannotTell, read, levigate.Warn},
		{sum, levigate.CannotTell, Note{}, levigate.Warn},
		{stop, levigate.Broken, Note{Mark: cite.Read, Level: levigate.Advice}, levigate.Advice},
		{&Rule{Severity: levigate.Advice}, levigate.Broken, read, levigate.Advice},
	} {
		if got := severity(c.rule, c.verdict, c.note); got != c.want {
			t.Errorf("%+v %s %+v: %s, want %s", c.rule, c.verdict, c.note, got, c.want)
		}
	}
}

// Raising by a note is a programmer's slip that the proof must see.
func TestNoNoteSaysMoreThanItsRule(t *testing.T) {
	rank := map[levigate.Severity]int{levigate.Advice: 0, levigate.Warn: 1, levigate.Stop: 2}
	for _, r := range All() {
		for i := range r.Examples {
			for _, f := range r.Examples[i].Run(r) {
				if f.Rule == r.ID && rank[f.Severity] > rank[r.Severity] {
					t.Errorf("%s: example %q says %s, the rule says at most %s", r.ID, r.Examples[i].Name, f.Severity, r.Severity)
				}
			}
		}
	}
}

func TestArgumentsAsPrinted(t *testing.T) {
	for _, c := range []struct{ template, want string }{
		{"{n} lines", "3 lines"},
		{"{f:2} g", "1.19 g"},
		{"{f} g", "1.19 g"},
		{"{d:2} %", "99.30 %"},
		{"{d}", "99.3"},
		{"{band}", "0.30 (0.28–0.34)"},
		{"{exact}", "0.60"},
		{"{over}", "9.6 (8.1–11.2)"},
		{"{list}", "a, b and c"},
		{"{parts:2 g}", "Starch (0.36 g) and Clay (0.08 g)"},
		{"{one}{none}", "a"},
		{"{verdict}", "holds"},
		{"{unknown} and {open", "{unknown} and {open"},
	} {
		got := fill(c.template, Args{
			"n": 3, "f": 1.19, "d": quantity.MustDecimal("99.3"),
			"band":  bandOf(&work.Figure{Value: 0.303, Low: 0.281, High: 0.338, Unit: quantity.One}),
			"exact": Band{0.6, 0.6, 0.6, quantity.One},
			"over":  Band{-9.6, -11.2, -8.1, quantity.GramPer100g}.turned(),
			"list":  []string{"a", "b", "c"}, "one": []string{"a"}, "none": []string{},
			"parts":   []Part{{"Starch", 0.36}, {"Clay", 0.08}},
			"verdict": levigate.Holds,
		})
		if got != c.want {
			t.Errorf("%s: %q, want %q", c.template, got, c.want)
		}
	}
}

func TestWordsNeverSaid(t *testing.T) {
	for text, want := range map[string]int{
		"This product is safe.": 1, "SAFE, and fully Compliant": 2, "It is protected; self-preserving!": 2,
		"So no preservative needed here": 1, "a gel that needs no preservative": 1,
		"a safety assessment by an assessor": 0, "keep it unprotected from nothing": 0, "": 0,
		"no line plays the part of a preservative": 0,
	} {
		if got := NeverSaid(text); len(got) != want {
			t.Errorf("%q: %q, want %d", text, got, want)
		}
	}
}

func TestEveryProductHasAUse(t *testing.T) {
	for _, p := range levigate.Products {
		if _, ok := uses[p]; !ok {
			t.Errorf("%s counts as neither rinse-off, leave-on nor oral", p)
		}
	}
	for p := range uses {
		if !slices.Contains(levigate.Products, p) {
			t.Errorf("%s is no product kind", p)
		}
	}
}

func TestExplain(t *testing.T) {
	for _, r := range All() {
		text, ok := Explain(strings.ToLower(r.ID))
		if !ok || !strings.Contains(text, r.Why) || !strings.Contains(text, r.Title) {
			t.Errorf("%s is not explained by its number", r.ID)
		}
		if byName, _ := Explain(r.Name); byName != text {
			t.Errorf("%s and %s are explained differently", r.ID, r.Name)
		}
		if words := NeverSaid(text); len(words) > 0 {
			t.Errorf("the page of %s says %q", r.ID, words)
		}
	}
	if _, ok := Explain("C00"); ok {
		t.Error("C00 is explained")
	}
}
