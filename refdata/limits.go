package refdata

import (
	"fmt"
	"sync"

	"levigate"
)

// GrowthLimit is the lowest water activity at which an organism, or a group of
// them, was reported to grow.
type GrowthLimit struct {
	Organism string
	Kind     string // "bacterium", "yeast" or "mould"
	Activity levigate.Range
	// InPolyol moves the limit in a polyol: bacteria have grown at lower activity
	// in glycerol than in salt. Zero or negative.
	InPolyol float64
	Note     string
	From     levigate.Provenance
}

// Criterion is an activity that room for water is counted to.
type Criterion struct {
	Figure   string // the figure that counts to it: "water.reserve-070"
	Activity float64
	Says     string // what the activity stands for, in a few words
	Note     string
	From     levigate.Provenance
}

// PreservativeLimit is one row of EU Annex V.
type PreservativeLimit struct {
	Entry      string // "29"
	Group      string
	Substances []LimitedSubstance
	Use        []string // "rinse-off", "leave-on", "oral": the products the row is about
	NotIn      []string // "spray", "oral", "leave-on", "inhaled", "under-3": where it may not be used
	Limit      float64  // % of the ready product
	As         string   // the acid the limit is counted as; empty: as it is
	Conditions string
	Warning    string // to be printed on the label
	From       levigate.Provenance
}

// SunLimit is how much of an oil may stay on skin that sees the sun.
type SunLimit struct {
	INCI  string
	Limit float64 // % of the finished product
	From  levigate.Provenance
}

// SunLimits lists the limits of pressed citrus oils on file.
func SunLimits() []SunLimit { return sunLimits() }

// LimitedSubstance is one of the substances a row covers. Factor is the grams
// of acid that one gram of it counts as; 1 for the acid itself.
type LimitedSubstance struct {
	INCI   string
	Factor float64
}

// GrowthLimits lists the growth limits, bacteria first.
func GrowthLimits() []GrowthLimit { return growthLimits() }

// Criteria lists the activities that room for water is counted to, lowest
// first.
func Criteria() []Criterion { return criteria() }

// PreservativeLimits lists the rows of EU Annex V on file. The annex has more:
// a preservative without a row is not judged, never allowed.
func PreservativeLimits() []PreservativeLimit { return preservativeLimits() }

var (
	growthLimits       = once("limits/growth", readGrowth)
	criteria           = once("limits/criteria", readCriterion)
	preservativeLimits = once("limits/preservatives", readPreservative)
	sunLimits          = once("limits/sun", func(r Row) (SunLimit, error) {
		limit, from, err := r.Cell("limit")
		return SunLimit{r.Text("inci"), limit.Typical, from}, err
	})
	acidFactors = sync.OnceValue(func() map[string]Row {
		out := map[string]Row{}
		for _, r := range mustOpen("limits/factors").Rows {
			out[r.Text("substance")+" as "+r.Text("expressed_as")] = r
		}
		return out
	})
)

// once reads a whole table with one row reader when first asked.
func once[T any](table string, read func(Row) (T, error)) func() []T {
	return sync.OnceValue(func() []T {
		t := mustOpen(table)
		out := make([]T, len(t.Rows))
		for i, r := range t.Rows {
			v, err := read(r)
			if err != nil {
				panic("refdata: " + err.Error())
			}
			out[i] = v
		}
		return out
	})
}

func readGrowth(r Row) (GrowthLimit, error) {
	g := GrowthLimit{Organism: r.Text("organism"), Kind: r.Text("kind"), Note: r.Text("note")}
	shift, _, err := r.Cell("in_polyol")
	if err != nil {
		return g, err
	}
	g.InPolyol = shift.Typical
	g.Activity, g.From, err = r.Cell("activity")
	return g, err
}

func readCriterion(r Row) (Criterion, error) {
	a, from, err := r.Cell("activity")
	return Criterion{r.Text("figure"), a.Typical, r.Text("says"), r.Text("note"), from}, err
}

func readPreservative(r Row) (PreservativeLimit, error) {
	limit, from, err := r.Cell("limit")
	p := PreservativeLimit{
		Entry: r.Text("entry"), Group: r.Text("group"), Use: list(r.Text("use")), NotIn: list(r.Text("not_in")),
		Limit: limit.Typical, As: r.Text("expressed_as"), Conditions: r.Text("conditions"), Warning: r.Text("warning"), From: from,
	}
	if err != nil {
		return p, err
	}
	for _, inci := range list(r.Text("substances")) {
		s := LimitedSubstance{inci, 1}
		if p.As != "" && p.As != inci {
			row, ok := acidFactors()[inci+" as "+p.As]
			if !ok {
				return p, fmt.Errorf("%s: no factor says what %s counts as in %s", r.At(), inci, p.As)
			}
			f, _, err := row.Cell("factor")
			if err != nil {
				return p, err
			}
			s.Factor = f.Typical
		}
		p.Substances = append(p.Substances, s)
	}
	return p, nil
}
