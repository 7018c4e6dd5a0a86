// Package worktest proves declared methods the way a careful reviewer would.
//
// Run takes the whole register, so a method added tomorrow is proved without
// editing a test. Faults returns what is wrong instead of failing a test, so
// that the harness itself can be shown methods it must reject.
package worktest

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"levigate/cite"
	"levigate/work"
)

// Run proves every registered method.
func Run(t *testing.T) {
	t.Helper()
	for _, m := range work.Methods() {
		t.Run(m.ID, func(t *testing.T) {
			for _, fault := range Faults(m) {
				t.Error(fault)
			}
		})
	}
}

// Faults lists what is wrong with a method; none means it is proved.
func Faults(m *work.Method) []string {
	var out []string
	say := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	if m.Title == "" || m.Text == "" || m.Unit == "" {
		say("a title, a text and a unit are needed")
	}
	if m.Accuracy == "" {
		say("an accuracy is needed; \"not stated\" is an answer")
	}
	if len(m.Sources) == 0 && !m.Own {
		say("a source is needed, or Own for a rule of our own")
	}
	for _, r := range m.Sources {
		if _, ok := cite.Find(r.Key); !ok {
			say("source %q is not in the bibliography", r.Key)
		}
	}
	vouched, law := false, false
	for i, c := range m.Checks {
		vouched = vouched || c.By >= work.Law
		law = law || c.By == work.Law
		if c.By == work.Published && c.From.Key == "" {
			say("check %d (%s) is published but names no source", i, c.What)
		}
		if c.From.Key != "" {
			if _, ok := cite.Find(c.From.Key); !ok {
				say("check %d (%s): source %q is not in the bibliography", i, c.What, c.From.Key)
			}
		}
		if got := Got(m, c); !(math.Abs(got-c.Want) <= c.Tol) {
			say("check %d (%s): got %.8g, want %.8g ± %.3g (%s)", i, c.What, got, c.Want, c.Tol, c.By)
		}
	}
	if !vouched {
		say("no check that our own output did not make: add a published value, an independent version or a law")
	}
	if m.Own && !law {
		say("a rule of our own needs a law")
	}
	if m.Own && !strings.Contains(strings.ToLower(m.Title), "own rule") {
		say("a rule of our own says so in its title")
	}
	if m.Kind == work.Equation {
		out = append(out, equationFaults(m)...)
	}
	return out
}

// Got is what the method answers to a check.
func Got(m *work.Method, c work.Check) float64 {
	if c.Got != nil {
		return c.Got()
	}
	return m.Func(c.In)
}

func equationFaults(m *work.Method) []string {
	var out []string
	if m.Func == nil {
		return []string{"an equation needs its function"}
	}
	rng := rand.New(rand.NewPCG(1, 2))
	in := make([]float64, len(m.Symbols))
	values := map[string]float64{}
	for range 1000 {
		for i, s := range m.Symbols {
			in[i] = s.Min + rng.Float64()*(s.Max-s.Min)
			values[s.Name] = in[i]
		}
		printed, err := work.Evaluate(m.Text, values)
		if err != nil {
			return append(out, "the printed equation: "+err.Error())
		}
		got := m.Func(in)
		if math.Abs(printed-got) > 1e-9*(1+math.Abs(got)) || math.IsNaN(got) || math.IsInf(got, 0) {
			out = append(out, fmt.Sprintf("the printed equation gives %.10g and the function %.10g at %v", printed, got, values))
			break
		}
	}
	for i, s := range m.Symbols {
		if s.Name == "" || s.Means == "" || s.Unit == "" || !(s.Min < s.Max) {
			out = append(out, fmt.Sprintf("symbol %d needs a name, a meaning, a unit and a range", i))
			continue
		}
		step := (s.Max - s.Min) * 1e-3
		for _, v := range []float64{s.Min - step, s.Max + step, math.NaN()} {
			for j, other := range m.Symbols {
				in[j] = (other.Min + other.Max) / 2
			}
			in[i] = v
			var re *work.RangeError
			if err := m.Guard(in...); !errors.As(err, &re) || re.Symbol.Name != s.Name {
				out = append(out, fmt.Sprintf("%s = %g is outside its range and was not refused", s.Name, v))
			}
		}
	}
	return out
}
