package rules

import (
	"math"
	"strings"

	"levigate"
	"levigate/cite"
	"levigate/quantity"
)

// usualReading is what the last digit of a maker's bench balance is worth, g.
const usualReading = 0.01

var _ = register(Rule{
	ID:    "C06",
	Name:  "finer-than-a-balance",
	Title: "A percentage written finer than a balance can follow",
	Why: "A third decimal says that somebody weighs to it. On a small batch its last digit is worth less than a hundredth of a gram, " +
		"which is what the usual bench balance shows. The figures are then kept by the sheet and lost at the bench, and the batch record differs from the formula.",
	Since:    "0.1",
	Severity: levigate.Advice,
	After:    []string{"C01"},
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Compares: Exact,
	Messages: map[string]Message{
		"finer": {
			Text: "Written to more than two decimals: {names}. On {batch:0} g the last digit is worth {step} g; a usual balance shows {reading} g.",
			Help: "round to 0.01 % and let the q.s. line take the difference, or make a stock dilution",
		},
	},
	Check: func(s *Subject, r *Report) {
		f := s.Formula
		if f.Batch.IsZero() {
			return
		}
		var lines []int
		finest := 0
		for i := range f.Lines {
			l := &f.Lines[i]
			_, digits, _ := strings.Cut(l.Percent.String(), ".")
			if l.QS || len(digits) <= 2 || f.Batch.Float()*lastDigit(len(digits)) >= usualReading*(1-1e-9) {
				continue
			}
			lines, finest = append(lines, i), max(finest, len(digits))
		}
		if len(lines) > 0 {
			r.Broken(Note{Say: "finer", At: atLines(lines), Args: Args{"names": s.Names(lines), "batch": f.Batch.Float(),
				"step": significant(f.Batch.Float() * lastDigit(finest)), "reading": usualReading}})
		}
	},
	Examples: []Example{
		{Name: "an eighth of a per cent on 200 g", Given: sheet(line("0.125", "Rose oil"), line("99.875", "Jojoba oil"), filledUp(), batch("200")), Want: "C06 advice: Written to more than two decimals: Rose oil. On 200 g the last digit is worth 0.002 g; a usual balance shows 0.01 g.\n" +
			"  help: round to 0.01 % and let the q.s. line take the difference, or make a stock dilution\n" +
			"  at: lines/0\n", Shows: Under},
		{Name: "the last digit is a hundredth of a gram", Given: sheet(line("0.125", "Rose oil"), line("99.875", "Jojoba oil"), filledUp(), batch("1000")), Shows: On},
		{Name: "a large batch", Given: sheet(line("0.125", "Rose oil"), line("99.875", "Jojoba oil"), filledUp(), batch("20000")), Shows: Over},
		{Name: "two decimals", Given: sheet(line("0.12", "Rose oil"), line("99.88", "Jojoba oil"), batch("100"))},
		{Name: "no batch size: nothing to hold it against", Given: sheet(line("0.125", "Rose oil"), line("99.875", "Jojoba oil"))},
	},
})

// lastDigit is what the last of so many decimals of a percentage is worth, as a
// fraction of the batch.
func lastDigit(decimals int) float64 { return math.Pow(10, -float64(decimals)-2) }

// significant cuts floating dust off a small number.
func significant(v float64) float64 {
	if v == 0 {
		return 0
	}
	k := math.Pow(10, 2-math.Ceil(math.Log10(v)))
	return math.Round(v*k) / k
}

// batch is the batch size, g.
func batch(grams string) entry {
	return func(a *levigate.Assessment) { a.Formula.Batch = quantity.MustDecimal(grams) }
}
