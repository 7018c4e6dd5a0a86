package exchange

import (
	"time"

	"levigate"
	"levigate/formulafile"
)

// What a price list may hold: far above any real one.
const (
	MaxBytes    = 1 << 20
	MaxPrices   = 5_000
	MaxProblems = 200 // reported at once
	maxCells    = 50  // in one line
	maxName     = 200 // characters of a material or supplier
	maxNotes    = 2_000
	maxCell     = 60 // of a number, a currency, a pack or a date
)

// ReadPrices reads the price list at a path. The error tells that the file could
// not be had at all; what is wrong inside it are problems.
func ReadPrices(path string, today time.Time) ([]levigate.Price, []levigate.Problem, error) {
	data, err := formulafile.Bytes(path, "price list", MaxBytes)
	if err != nil {
		return nil, nil, err
	}
	prices, problems := Prices(path, data, today)
	return prices, problems, nil
}

// Prices reads a price list. The name is the file's; a price dated after today
// is a slip. With any problem there are no prices.
func Prices(name string, data []byte, today time.Time) ([]levigate.Price, []levigate.Problem) {
	r := &reader{name: name, today: levigate.DayOf(today)}
	prices := r.prices(data)
	if problems := r.sorted(); len(problems) > 0 {
		return nil, problems
	}
	return prices, nil
}

func (r *reader) prices(data []byte) []levigate.Price {
	text, ok := r.guard(data)
	if !ok {
		return nil
	}
	rows := r.rows(text)
	if len(rows) == 0 {
		if len(r.problems) == 0 {
			r.report(levigate.Place{}, "begin with a heading: "+heading, "the price list is empty")
		}
		return nil
	}
	if !r.head(rows[0]) {
		return nil
	}
	rows = rows[1:]
	if len(rows) > MaxPrices {
		r.report(rows[MaxPrices].at(0), "cut it into several lists", "the list has more than %d prices", MaxPrices)
		return nil
	}
	r.commas = r.usesCommas(rows)
	out := make([]levigate.Price, 0, len(rows))
	for _, w := range rows {
		if r.full() {
			break
		}
		out = append(out, r.price(w))
	}
	if len(rows) == 0 && len(r.problems) == 0 {
		r.report(levigate.Place{}, "write one line a price under the heading", "the list has a heading and no prices")
	}
	return out
}
