package rules

import (
	"math"
	"strings"

	"levigate"
	"levigate/cite"
)

var _ = register(Rule{
	ID:    "W08",
	Name:  "readings-disagree",
	Title: "Two readings of one thing differ beyond their own spread",
	Why: "Readings of one property of one lot or version are pooled and everything downstream rests on the mean. Where two of them differ by more than " +
		"their stated spreads together, one of them measured something else: another lot, a cup not at rest, an instrument that drifts. " +
		"The pooled band is widened to hold both, which hides the question and does not answer it.",
	Since:    "0.1",
	Severity: levigate.Warn,
	Sources:  []cite.Ref{{Key: "levigate-judgement"}},
	Messages: map[string]Message{
		"beyond": {
			Text: "{one} of {subject}, {property}, reads {a} and {other} reads {b}: they differ by {by}, their spreads together are {spread}.",
			Help: "find out which of the two measured something else, and correct it by a new record",
		},
		"no-spread": {
			Text:  "{one} of {subject}, {property}, reads {a} and {other} reads {b}: neither states its spread.",
			Help:  "repeat the reading, and note the spread of the repeats",
			Needs: "a third reading of it, with repeats",
		},
	},
	Check: func(s *Subject, r *Report) {
		for i := range s.Readings {
			for j := range i {
				disagree(&s.Readings[j], &s.Readings[i], r)
			}
		}
	},
	Examples: []Example{
		{
			Name:  "two cups far apart",
			Given: sheet(reading("R1", 0.31, 0.01), reading("R2", 0.36, 0.01)),
			Want: "W08 warn: R1 of HP-01, water.activity, reads 0.31 and R2 reads 0.36: they differ by 0.05, their spreads together are 0.014.\n" +
				"  help: find out which of the two measured something else, and correct it by a new record\n",
		},
		{
			Name:  "nobody noted a spread",
			Given: sheet(reading("R1", 0.31, 0), reading("R2", 0.36, 0)),
			Want: "W08 warn, cannot tell: R1 of HP-01, water.activity, reads 0.31 and R2 reads 0.36: neither states its spread.\n" +
				"  help: repeat the reading, and note the spread of the repeats\n" +
				"  needs: a third reading of it, with repeats\n",
		},
		{Name: "two cups that agree", Given: sheet(reading("R1", 0.31, 0.01), reading("R2", 0.32, 0.01))},
		{Name: "one reading", Given: sheet(reading("R1", 0.31, 0))},
	},
})

// disagree compares two readings of one property of one subject.
func disagree(a, b *levigate.Reading, r *Report) {
	if a.Property != b.Property || a.Subject.Kind != b.Subject.Kind || !strings.EqualFold(a.Subject.Key, b.Subject.Key) ||
		math.Abs(a.Conditions.Temperature-b.Conditions.Temperature) > 2 {
		return
	}
	by, spread := math.Abs(a.Value-b.Value), math.Hypot(a.Plus, b.Plus)
	args := Args{"one": a.ID, "other": b.ID, "subject": a.Subject.Key, "property": a.Property, "a": a.Value, "b": b.Value}
	switch {
	case by <= spread || by == 0:
	case spread == 0:
		r.CannotTell(Note{Say: "no-spread", Args: args})
	default:
		args["by"], args["spread"] = rounded(by), rounded(spread)
		r.Broken(Note{Say: "beyond", Args: args})
	}
}

// rounded keeps two significant digits of a spread: more would pretend.
func rounded(v float64) float64 {
	if v == 0 {
		return 0
	}
	p := math.Pow(10, 1-math.Floor(math.Log10(v)))
	return math.Round(v*p) / p
}

// reading is a reading of the activity in force.
func reading(id string, value, plus float64) entry {
	return func(a *levigate.Assessment) {
		a.Readings = append(a.Readings, levigate.Reading{ID: id, Subject: levigate.Subject{Kind: "version", Key: "HP-01"},
			Property: "water.activity", Value: value, Plus: plus})
	}
}
