package refdata

import (
	"fmt"
	"strings"
	"sync"

	"levigate"
	"levigate/cite"
)

// Pair is one row of the pairs tables: a powder that holds, or breaks down,
// what stands beside it.
type Pair struct {
	Key   string // "charcoal-caffeine"; a key is never reused
	Table string
	// A is the powder and B the substance beside it: a class in lower case
	// ("charcoal", "retinoid") or the INCI name of one substance.
	A, B string
	// Least is the % of the powder from which the row speaks.
	Least float64
	// Water says that the two meet only in a polar liquid.
	Water bool
	// Capacity is the most of B that one gram of the powder was found to hold,
	// mg; Exchange the same in mmol of charge. Unknown where nothing is on file.
	Capacity, Exchange         levigate.Range
	CapacityFrom, ExchangeFrom levigate.Provenance

	Level   levigate.Severity // Warn or Advice: no row of these may stop
	Mark    cite.Mark
	Sources []cite.Ref
	Why     string // half a sentence, as it follows "A beside B: "
	Do      string
}

// pairTables is the order the rows are asked in: for two lines the first row
// that fits speaks, so what is known about one substance stands before what is
// said of its class, and what was measured before what is only done.
var pairTables = []string{"pairs/breakdown", "pairs/binding", "pairs/practice"}

// Pairs lists every row in the order they are asked.
func Pairs() []Pair { return allPairs() }

var allPairs = sync.OnceValue(func() []Pair {
	var out []Pair
	for _, name := range pairTables {
		rows, err := readPairs(mustOpen(name))
		if err != nil {
			panic("refdata: " + err.Error())
		}
		out = append(out, rows...)
	}
	return out
})

func readPairs(t *Table) ([]Pair, error) {
	out := make([]Pair, 0, len(t.Rows))
	for _, r := range t.Rows {
		p, err := readPair(t.Name, r)
		if err != nil {
			return nil, err
		}
		out = append(out, p)
	}
	return out, nil
}

func readPair(table string, r Row) (Pair, error) {
	p := Pair{Key: r.Text("key"), Table: table, A: r.Text("a"), B: r.Text("b"), Why: r.Text("why"), Do: r.Text("do")}
	fail := func(err error) (Pair, error) { return Pair{}, fmt.Errorf("%s: %w", r.At(), err) }
	for _, text := range []string{p.Key, p.A, p.B, p.Why, p.Do} {
		if text == "" {
			return fail(fmt.Errorf("key, a, b, why and do may not be empty"))
		}
	}
	var err error
	if p.Least, err = r.Number("least"); err != nil {
		return Pair{}, err
	}
	switch r.Text("water") {
	case "yes":
		p.Water = true
	case "no":
	default:
		return fail(fmt.Errorf("water is yes or no, not %q", r.Text("water")))
	}
	if p.Capacity, p.CapacityFrom, err = r.Cell("capacity"); err != nil {
		return Pair{}, err
	}
	if p.Exchange, p.ExchangeFrom, err = r.Cell("exchange"); err != nil {
		return Pair{}, err
	}
	switch p.Level = levigate.Severity(r.Text("level")); p.Level {
	case levigate.Warn, levigate.Advice:
	default:
		return fail(fmt.Errorf("level is warn or advice, not %q: no pair may stop", p.Level))
	}
	if p.Mark, err = cite.ParseMark(r.Text("mark")); err != nil {
		return fail(err)
	}
	if p.Sources, err = parseRefs(r.Text("from")); err != nil {
		return fail(err)
	}
	return p, nil
}

// parseRefs reads "key@place; key": one source or more.
func parseRefs(text string) ([]cite.Ref, error) {
	var out []cite.Ref
	for _, part := range strings.Split(text, ";") {
		key, at, _ := strings.Cut(strings.TrimSpace(part), "@")
		if _, ok := cite.Find(key); !ok {
			return nil, fmt.Errorf("source %q is not in the bibliography", key)
		}
		out = append(out, cite.Ref{Key: key, At: at})
	}
	return out, nil
}
