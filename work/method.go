package work

import (
	"errors"
	"fmt"
	"math"
	"sort"

	"levigate/cite"
	"levigate/quantity"
)

// Kind tells the two kinds of method apart.
type Kind uint8

const (
	// Equation is a closed form in named scalars; its Text is parsed and
	// compared with Func, so the printed formula cannot drift from the code.
	Equation Kind = iota
	// Procedure is anything else: a sum over substances, a root, an integral.
	// Its Text is prose and it is proved by its checks.
	Procedure
)

// Symbol is one input of a method, with the range it is stated for. The range
// is declared here and nowhere else: guard, message and page are made from it.
type Symbol struct {
	Name     string
	Means    string
	Unit     quantity.Unit
	Min, Max float64
}

// Vouch says who stands behind a check's expected value.
type Vouch uint8

// The vouches. Pinned is our own past output: it shows change, not truth.
const (
	Pinned Vouch = iota
	FromMemory
	CommonPractice
	Law         // conservation, a limit, an inverse
	Independent // a second version or a closed form, made another way
	Published   // a value in a named source
)

var vouchNames = [...]string{"pinned", "from memory", "common practice", "law", "independent", "published"}

// String is the vouch in words.
func (v Vouch) String() string { return vouchNames[v] }

// Check is one expected value. For an equation, In gives the symbols in order;
// for a procedure, Got computes the value to compare.
type Check struct {
	What string
	In   []float64
	Got  func() float64
	Want float64
	Tol  float64 // absolute
	By   Vouch
	From cite.Ref // required for Published
}

// Method is one declared way of computing one kind of figure.
type Method struct {
	ID       string
	Title    string
	Kind     Kind
	Text     string
	Symbols  []Symbol
	Unit     quantity.Unit
	Accuracy string // how good it is; "not stated" is an answer
	Own      bool   // a rule of this project: its title says so and it needs a law
	Sources  []cite.Ref
	Checks   []Check
	Func     func(in []float64) float64 // equations only
	// Refuses says in words why inputs that are each within their range make no
	// sense together; empty when they do. Nil for most.
	Refuses func(in []float64) string
}

var methods = map[string]*Method{}

// Register adds a method to the register; a second one of the same name is a
// programmer's slip.
func Register(m *Method) *Method {
	if _, dup := methods[m.ID]; dup {
		panic("work: method " + m.ID + " is declared twice")
	}
	methods[m.ID] = m
	return m
}

// Prove adds checks to a method that need data the method itself may not see
// (measured tables, whole formulas).
func Prove(m *Method, checks ...Check) bool {
	m.Checks = append(m.Checks, checks...)
	return true
}

// Find looks a method up.
func Find(id string) (*Method, bool) {
	m, ok := methods[id]
	return m, ok
}

// Methods lists all methods by name.
func Methods() []*Method {
	out := make([]*Method, 0, len(methods))
	for _, m := range methods {
		out = append(out, m)
	}
	sort.Slice(out, func(i, j int) bool { return out[i].ID < out[j].ID })
	return out
}

// RangeError says which symbol left the range its method is stated for.
type RangeError struct {
	Symbol Symbol
	Value  float64
}

func (e *RangeError) Error() string {
	return fmt.Sprintf("%s (%s) is %s %s; the method is stated for %s to %s",
		e.Symbol.Name, e.Symbol.Means, quantity.Significant(e.Value, 4), e.Symbol.Unit,
		quantity.Significant(e.Symbol.Min, 4), quantity.Significant(e.Symbol.Max, 4))
}

// Guard returns a *RangeError for the first input outside its symbol's range,
// NaN included.
func (m *Method) Guard(in ...float64) error {
	if len(in) != len(m.Symbols) {
		panic(fmt.Sprintf("work: %s takes %d inputs, got %d", m.ID, len(m.Symbols), len(in)))
	}
	for i, s := range m.Symbols {
		if math.IsNaN(in[i]) || in[i] < s.Min || in[i] > s.Max {
			return &RangeError{s, in[i]}
		}
	}
	if m.Refuses != nil {
		if why := m.Refuses(in); why != "" {
			return errors.New(why)
		}
	}
	return nil
}
