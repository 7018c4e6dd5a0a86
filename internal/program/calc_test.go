package program

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"levigate"
	"levigate/work"
)

func TestCalc(t *testing.T) {
	figures, err := New().Calc("water.gab", []string{"m0=0.0355 g/g", "c=14.42", "k=81.4%", "activity=0.575"})
	if err != nil {
		t.Fatal(err)
	}
	// Sun 2008, microcrystalline cellulose: the printed point 0.06186.
	if f := figures[0]; f.ID != "water.gab" || math.Abs(f.Value-0.06186) > 6e-6 || f.Unit != "g/g" || f.Working == nil {
		t.Errorf("got %+v", f)
	}
}

// What is left out takes the declared default, and the working says so.
func TestCalcDefaultIsSaid(t *testing.T) {
	figures, err := New().Calc("water.deliquescence", []string{"a25=0.75", "s=100"})
	if err != nil {
		t.Fatal(err)
	}
	if f := figures[0]; math.Abs(f.Value-0.75) > 1e-12 { // at its own temperature
		t.Errorf("at 25 °C the activity is %g", f.Value)
	}
	in := figures[0].Working.Steps[0].Inputs
	if last := in[len(in)-1]; last.Value != levigate.Room || !strings.Contains(last.From, "default") {
		t.Errorf("the working says %+v", last)
	}
	warm, err := New().Calc("water.deliquescence", []string{"a25=0.75", "s=100", "t=77F"})
	if err != nil || math.Abs(warm[0].Value-0.75) > 1e-12 {
		t.Errorf("77 °F is 25 °C; got %v, %v", warm, err)
	}
}

func TestCalcRefuses(t *testing.T) {
	full := []string{"m0=0.0355", "c=14.42", "k=0.814", "activity=0.575"}
	for name, c := range map[string]struct {
		calc string
		in   []string
		says string
	}{
		"unknown name":    {"water.gba", full, "water.gba"},
		"a procedure":     {"water.sum", full, "water.sum"},
		"unknown key":     {"water.gab", append([]string{"mo=1"}, full[1:]...), `"mo"`},
		"missing key":     {"water.gab", full[:3], "activity"},
		"twice":           {"water.gab", append(full, "c=2"), "c is given twice"},
		"no pair":         {"water.gab", append(full, "hello"), "hello"},
		"no number":       {"water.gab", []string{"m0=lots"}, "lots"},
		"out of range":    {"water.gab", []string{"m0=0.0355", "c=14.42", "k=0.814", "activity=1.2"}, "stated for 0 to 1.000"},
		"wrong dimension": {"water.gab", []string{"m0=5mL"}, "mL"},
		"not finite":      {"water.gab", []string{"m0=NaN"}, "NaN"},
	} {
		_, err := New().Calc(c.calc, c.in)
		if levigate.CodeOf(err) != levigate.Invalid || !strings.Contains(err.Error(), c.says) || helpOf(err) == "" {
			t.Errorf("%s: %v (help %q)", name, err, helpOf(err))
		}
	}
}

// A default must lie inside the range it is a default for.
func TestDefaultsAreInRange(t *testing.T) {
	n := 0
	for _, m := range Calcs() {
		for _, s := range m.Symbols {
			if d, ok := Default(s); ok {
				n++
				if d < s.Min || d > s.Max {
					t.Errorf("%s: %s is %g by default, stated for %g to %g", m.ID, s.Name, d, s.Min, s.Max)
				}
			}
		}
	}
	if n == 0 {
		t.Error("no default was looked at")
	}
}

// Every equation can be asked, in the middle of its ranges.
func TestEveryEquationAnswers(t *testing.T) {
	for _, m := range Calcs() {
		var in []string
		for _, s := range m.Symbols {
			in = append(in, s.Name+"="+text((s.Min+s.Max)/2))
		}
		figures, err := New().Calc(m.ID, in)
		if err != nil && levigate.CodeOf(err) != levigate.Internal {
			t.Errorf("%s: %v", m.ID, err)
		}
		for _, f := range figures {
			if f.State == work.Missing {
				t.Errorf("%s: %+v", m.ID, f)
			}
		}
	}
}

func text(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

// Inputs that are each within their range may make no sense together.
func TestCalcRefusesWhatCannotBe(t *testing.T) {
	p := New()
	for line, want := range map[string]string{
		"weighing.minimum d=0 s=0 tolerance=1":                      "both 0",
		"weighing.smallest-batch percent=1 d=0 s=0 tolerance=1":     "both 0",
		"weighing.uncertainty mass=1 d=0 s=0":                       "both 0",
		"weighing.premix active=1 diluent=9 take=10 d=0 s=0":        "both 0",
		"weighing.premix active=1 diluent=9 take=10.1 d=0.01 s=0":   "more than the 10 g",
		"weighing.premix-diluent active=0.12 take=0.125 wanted=0.2": "cannot hold more than itself",
		"weighing.premix-diluent active=0.12 take=0.5 wanted=0.2":   "only 0.12 g go into",
		"structure.grain-fraction grains=10 all=9":                  "grains included",
		"weighing.minimum d=0,01 s=0 tolerance=1":                   "write a point",
	} {
		words := strings.Fields(line)
		if _, err := p.Calc(words[0], words[1:]); levigate.CodeOf(err) != levigate.Invalid || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", line, err)
		}
	}
	for _, line := range []string{
		"weighing.premix active=1 diluent=9 take=10 d=0.01 s=0", "weighing.premix active=0.1 diluent=0.2 take=0.3 d=0.01 s=0",
		"weighing.premix-diluent active=0.5 take=0.5 wanted=0.5", "structure.grain-fraction grains=9 all=9",
	} {
		words := strings.Fields(line)
		if _, err := p.Calc(words[0], words[1:]); err != nil {
			t.Errorf("%s: %v", line, err)
		}
	}
}
