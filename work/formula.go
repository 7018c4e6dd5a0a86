package work

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"
)

// The printed equations use + − × / ^, brackets and the functions below;
// nothing else, so that a person can check one with a pocket calculator.
var functions = map[string]func(args []float64) (float64, error){
	"exp":   one(math.Exp),
	"ln":    one(math.Log),
	"log10": one(math.Log10),
	"sqrt":  one(math.Sqrt),
	"min":   fold(math.Min),
	"max":   fold(math.Max),
}

func one(f func(float64) float64) func([]float64) (float64, error) {
	return func(a []float64) (float64, error) {
		if len(a) != 1 {
			return 0, fmt.Errorf("takes one value, got %d", len(a))
		}
		return f(a[0]), nil
	}
}

func fold(f func(a, b float64) float64) func([]float64) (float64, error) {
	return func(a []float64) (float64, error) {
		if len(a) < 2 {
			return 0, fmt.Errorf("takes two values or more, got %d", len(a))
		}
		v := a[0]
		for _, b := range a[1:] {
			v = f(v, b)
		}
		return v, nil
	}
}

// Evaluate computes a printed equation with the symbols' values.
func Evaluate(text string, values map[string]float64) (float64, error) {
	p := &parser{tokens: tokenize(text), values: values}
	v, err := p.sum()
	if err != nil {
		return 0, fmt.Errorf("%s: %w", text, err)
	}
	if p.pos != len(p.tokens) {
		return 0, fmt.Errorf("%s: %q is left over", text, p.tokens[p.pos])
	}
	return v, nil
}

// Substitute writes an equation with numbers in place of symbols.
func Substitute(text string, values map[string]string) string {
	var b strings.Builder
	for _, piece := range split(text) {
		if v, ok := values[piece]; ok {
			if strings.HasPrefix(v, "-") {
				v = "(" + v + ")"
			}
			piece = v
		}
		b.WriteString(piece)
	}
	return b.String()
}

// split cuts text into names, numbers, single marks and white space, losing
// nothing.
func split(text string) []string {
	var out []string
	r := []rune(text)
	for i := 0; i < len(r); {
		j := i + 1
		switch {
		case isName(r[i]):
			for j < len(r) && (isName(r[j]) || unicode.IsDigit(r[j])) {
				j++
			}
		case unicode.IsDigit(r[i]):
			for j < len(r) && (unicode.IsDigit(r[j]) || r[j] == '.' || exponent(r, j)) {
				j++
			}
		}
		out = append(out, string(r[i:j]))
		i = j
	}
	return out
}

func isName(c rune) bool { return unicode.IsLetter(c) || c == '_' }

// exponent accepts the e of 1e-5 and the sign behind it.
func exponent(r []rune, j int) bool {
	if r[j] == 'e' {
		return j+1 < len(r) && (unicode.IsDigit(r[j+1]) || r[j+1] == '-')
	}
	return r[j] == '-' && r[j-1] == 'e'
}

func tokenize(text string) []string {
	var out []string
	for _, t := range split(text) {
		if strings.TrimSpace(t) != "" {
			out = append(out, t)
		}
	}
	return out
}

type parser struct {
	tokens []string
	pos    int
	values map[string]float64
}

func (p *parser) peek() string {
	if p.pos < len(p.tokens) {
		return p.tokens[p.pos]
	}
	return ""
}

func (p *parser) next() string {
	t := p.peek()
	p.pos++
	return t
}

func (p *parser) sum() (float64, error) {
	v, err := p.product()
	for err == nil {
		switch p.peek() {
		case "+":
			p.pos++
			var w float64
			w, err = p.product()
			v += w
		case "−", "-":
			p.pos++
			var w float64
			w, err = p.product()
			v -= w
		default:
			return v, nil
		}
	}
	return v, err
}

func (p *parser) product() (float64, error) {
	v, err := p.signed()
	for err == nil {
		switch p.peek() {
		case "×", "*", "·":
			p.pos++
			var w float64
			w, err = p.signed()
			v *= w
		case "/":
			p.pos++
			var w float64
			w, err = p.signed()
			v /= w
		default:
			return v, nil
		}
	}
	return v, err
}

// signed binds looser than a power, as written mathematics does: −x^2 = −(x^2).
func (p *parser) signed() (float64, error) {
	if t := p.peek(); t == "−" || t == "-" {
		p.pos++
		v, err := p.signed()
		return -v, err
	}
	return p.power()
}

func (p *parser) power() (float64, error) {
	v, err := p.atom()
	if err == nil && p.peek() == "^" {
		p.pos++
		var w float64
		w, err = p.signed()
		v = math.Pow(v, w)
	}
	return v, err
}

func (p *parser) atom() (float64, error) {
	t := p.next()
	switch {
	case t == "":
		return 0, fmt.Errorf("the equation stops short")
	case t == "(":
		v, err := p.sum()
		if err == nil && p.next() != ")" {
			err = fmt.Errorf("a bracket is not closed")
		}
		return v, err
	case unicode.IsDigit([]rune(t)[0]):
		return strconv.ParseFloat(t, 64)
	}
	if f, ok := functions[t]; ok && p.peek() == "(" {
		p.pos++
		var args []float64
		for {
			v, err := p.sum()
			if err != nil {
				return 0, err
			}
			args = append(args, v)
			if c := p.next(); c == ")" {
				break
			} else if c != "," {
				return 0, fmt.Errorf("%s: %q where , or ) should stand", t, c)
			}
		}
		v, err := f(args)
		if err != nil {
			return 0, fmt.Errorf("%s %w", t, err)
		}
		return v, nil
	}
	v, ok := p.values[t]
	if !ok {
		return 0, fmt.Errorf("%q is neither a symbol nor a function", t)
	}
	return v, nil
}
