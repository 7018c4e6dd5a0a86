package rules

import (
	"fmt"
	"strings"

	"levigate/cite"
	"levigate/quantity"
	"levigate/refdata"
)

// Limit is one row of refdata a rule compares with, as its page prints it. The
// number lives there, with its source, and nowhere else.
type Limit struct {
	Row    string
	Text   string
	Mark   cite.Mark
	Source cite.Ref
}

// limitRows resolves a reference: a table ("limits/preservatives"), or one row
// of it ("limits/criteria water.reserve-075").
func limitRows(ref string) ([]Limit, error) {
	table, row, one := strings.Cut(ref, " ")
	var out []Limit
	switch table {
	case "limits/criteria":
		for _, c := range refdata.Criteria() {
			if !one || row == c.Figure {
				out = append(out, Limit{quantity.Fixed(c.Activity, 2), c.Says, c.From.Mark, c.From.From})
			}
		}
	case "limits/preservatives":
		for _, p := range refdata.PreservativeLimits() {
			out = append(out, Limit{"V/" + p.Entry, fmt.Sprintf("%s, %s: %s %%", p.Group, strings.Join(p.Use, " and "),
				quantity.Significant(p.Limit, 2)), p.From.Mark, p.From.From})
		}
	case "limits/sun":
		for _, l := range refdata.SunLimits() {
			out = append(out, Limit{l.INCI, quantity.Significant(l.Limit, 2) + " % of what stays on the skin", l.From.Mark, l.From.From})
		}
	case "pairs":
		out = pairRows(refdata.Pairs())
	case "pairs/clashes":
		out = pairRows(refdata.Clashes())
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("%q names no row of a table of limits", ref)
	}
	return out, nil
}

func pairRows(pairs []refdata.Pair) []Limit {
	out := make([]Limit, 0, len(pairs))
	for _, p := range pairs {
		out = append(out, Limit{p.Key, p.A + " beside " + p.B + ": " + p.Why, p.Mark, p.Sources[0]})
	}
	return out
}

// criterion is the row of the criteria that a figure counts its room to.
func criterion(figure string) refdata.Criterion {
	for _, c := range refdata.Criteria() {
		if c.Figure == figure {
			return c
		}
	}
	panic("rules: no criterion for " + figure)
}

// lowRisk is the criterion the rules on preservation lean on.
const lowRisk = "water.reserve-075"
