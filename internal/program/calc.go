package program

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"levigate"
	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// Calcs lists what Calc can answer: every declared equation, by name.
func Calcs() []*work.Method {
	return slices.DeleteFunc(work.Methods(), func(m *work.Method) bool { return m.Kind != work.Equation })
}

// Calc answers one question from typed inputs, "key=value" each. The answer is
// the first figure.
func (p *Program) Calc(name string, inputs []string) ([]work.Figure, error) {
	m, ok := work.Find(name)
	if !ok || m.Kind != work.Equation {
		var names []string
		for _, c := range Calcs() {
			names = append(names, c.ID)
		}
		return nil, invalid("nothing is calculated under the name "+quoted(name), meant(name, names, "levigate calc --list names them all"))
	}
	values, err := typed(m, inputs)
	if err != nil {
		return nil, err
	}
	given := make([]work.Input, len(m.Symbols))
	in := make([]float64, len(m.Symbols))
	for i, s := range m.Symbols {
		v, ok := values[s.Name]
		given[i] = work.Input{Value: v, From: "typed"}
		if !ok {
			d, ok := Default(s)
			if !ok {
				return nil, invalid(fmt.Sprintf("%s needs %s (%s, %s)", m.ID, s.Name, s.Means, s.Unit), "add "+s.Name+"=…")
			}
			given[i] = work.Input{Value: d, From: "left out: the default"}
		}
		in[i] = given[i].Value
	}
	if err := m.Guard(in...); err != nil {
		return nil, &levigate.Error{Code: levigate.Invalid, Message: err.Error(), Help: "levigate calc --list " + m.ID + " prints the ranges", Cause: err}
	}
	return result(m, given, m.Func(in))
}

// typed reads "key=value" words.
func typed(m *work.Method, inputs []string) (map[string]float64, error) {
	values := map[string]float64{}
	for _, word := range inputs {
		key, text, ok := strings.Cut(word, "=")
		if !ok {
			return nil, invalid(quoted(word)+" is not key=value", "write it like "+m.Symbols[0].Name+"="+quantity.Significant(m.Symbols[0].Min, 3))
		}
		at := slices.IndexFunc(m.Symbols, func(s work.Symbol) bool { return s.Name == key })
		if at < 0 {
			keys := keysOf(m)
			return nil, invalid(fmt.Sprintf("%s has no key %q", m.ID, key), meant(key, keys, "its keys are "+strings.Join(keys, ", ")))
		}
		if _, twice := values[key]; twice {
			return nil, invalid(key+" is given twice", "keep one of them")
		}
		v, err := quantity.ParseIn(text, m.Symbols[at].Unit)
		if err != nil {
			return nil, &levigate.Error{Code: levigate.Invalid, Message: key + ": " + err.Error(),
				Help: fmt.Sprintf("%s is %s, in %s", key, m.Symbols[at].Means, m.Symbols[at].Unit), Cause: err}
		}
		values[key] = v
	}
	return values, nil
}

func keysOf(m *work.Method) []string {
	var keys []string
	for _, s := range m.Symbols {
		keys = append(keys, s.Name)
	}
	return keys
}

// result makes the figure. What was typed is taken as it stands; how good the
// method is stays a cause whose size is told in words.
func result(m *work.Method, given []work.Input, v float64) ([]work.Figure, error) {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil, &levigate.Error{Code: levigate.Internal, Message: m.ID + " gives no finite number here",
			Help: "please report the line you typed"}
	}
	rec := work.NewRecorder(m.Title)
	rec.Equation(m, v, given...)
	f := work.Figure{ID: m.ID, Title: m.Title, Unit: m.Unit, State: work.Good, Grade: cite.Estimated, Method: m, Sources: m.Sources, Working: rec.Step()}
	method := &work.Cause{Key: "method/" + m.ID, Name: "the method: " + m.Accuracy, Grade: cite.Estimated, NotStated: true}
	f.SetBand(v, []work.Move{{Cause: method}}, math.Inf(-1), math.Inf(1))
	return []work.Figure{f}, nil
}
