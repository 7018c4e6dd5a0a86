package rules

import (
	"fmt"
	"strconv"
	"strings"

	"levigate"
	"levigate/quantity"
	"levigate/work"
)

// Band is a figure as an argument: raw for machines, "0.30 (0.28–0.34)" for
// people.
type Band struct {
	Value float64       `json:"value"`
	Low   float64       `json:"low"`
	High  float64       `json:"high"`
	Unit  quantity.Unit `json:"unit"`
}

// Part is one of several contributors as an argument: "Maize starch (0.36 g)".
type Part struct {
	Name  string  `json:"name"`
	Value float64 `json:"value"`
}

// bandOf takes a figure's band.
func bandOf(f *work.Figure) Band { return Band{f.Value, f.Low, f.High, f.Unit} }

// bandOfRange takes a range's band.
func bandOfRange(r levigate.Range, u quantity.Unit) Band {
	return Band{r.Typical, r.Low, r.High, u}
}

// turned is a band seen from the other side: room for water as "over by".
func (b Band) turned() Band { return Band{-b.Value, -b.High, -b.Low, b.Unit} }

func (b Band) String() string {
	v, lo, hi := quantity.Shown(b.Value, b.Low, b.High, b.Unit)
	if lo == hi {
		return v
	}
	if strings.HasPrefix(lo, "-") || strings.HasPrefix(hi, "-") {
		// An en dash beside a minus reads badly.
		return minus(v) + " (" + minus(lo) + " to " + minus(hi) + ")"
	}
	return v + " (" + lo + "–" + hi + ")"
}

// minus is a number with the sign that stands as wide as a plus.
func minus(number string) string { return strings.Replace(number, "-", "−", 1) }

// write prints one argument. How is what stands behind the colon: a number of
// decimals, with a unit behind it for lists of parts.
func write(b *strings.Builder, v any, how string) {
	digits, unit := -1, ""
	if how != "" {
		d, u, _ := strings.Cut(how, " ")
		if n, err := strconv.Atoi(d); err == nil {
			digits, unit = n, u
		}
	}
	switch v := v.(type) {
	case string:
		b.WriteString(v)
	case int:
		b.WriteString(strconv.Itoa(v))
	case float64:
		b.WriteString(number(v, digits))
	case quantity.Decimal:
		b.WriteString(v.Fixed(max(digits, 0)))
	case []string:
		list(b, len(v), func(i int) { b.WriteString(v[i]) })
	case []Part:
		list(b, len(v), func(i int) {
			b.WriteString(v[i].Name + " (" + strings.TrimSpace(number(v[i].Value, digits)+" "+unit) + ")")
		})
	default:
		fmt.Fprint(b, v)
	}
}

func number(v float64, digits int) string {
	if digits < 0 {
		return strconv.FormatFloat(v, 'f', -1, 64)
	}
	return quantity.Fixed(v, digits)
}

// list writes "a, b and c".
func list(b *strings.Builder, n int, each func(i int)) {
	for i := range n {
		switch {
		case i > 0 && i == n-1:
			b.WriteString(" and ")
		case i > 0:
			b.WriteString(", ")
		}
		each(i)
	}
}
