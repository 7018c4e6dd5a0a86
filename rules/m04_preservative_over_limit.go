package rules

import (
	"math"
	"slices"

	"levigate"
	"levigate/cite"
	"levigate/quantity"
	"levigate/refdata"
)

var _ = register(Rule{
	ID:    "M04",
	Name:  "preservative-over-limit",
	Title: "A preservative against the limit on file",
	Why: "The EU lists the preservatives that may be used, and how much of each the ready product may hold. " +
		"A blend hides them: what counts is the sum over all lines, opened, and for a salt what it comes to as its acid. " +
		"Only the rows on file are compared; a preservative without a row is not judged, and the legal text in force decides.",
	Since:    "0.1",
	Severity: levigate.Stop,
	Sources:  []cite.Ref{{Key: "eu-annexes", At: "Annex V"}},
	Limits:   []string{"limits/preservatives"},
	Compares: Banded,
	Messages: map[string]Message{
		"above": {
			Text: "{names}: {sum} % {basis}, above the limit on file of {limit:2} % ({row}, {use}). Brought by {most:2 %}.",
			Help: "at most {bound:2 %}, all else unchanged; compare with the legal text in force",
		},
		"cannot-tell": {
			Text:  "{names}: {sum} % {basis}; whether that is above the limit on file of {limit:2} % ({row}, {use}) cannot be told.",
			Help:  "ask the supplier for the share of {names} in this lot, or take less",
			Needs: "the certificate of analysis of {lines}",
		},
		"use-unknown": {
			Text:  "{names}: {sum} % {basis}; the limit on file is {limit:2} % in a product left on and {highest:2} % in one rinsed off ({row}).",
			Help:  "name a product kind that says whether it is rinsed off",
			Needs: "how the product is used",
		},
		"other-use": {
			Text:  "{names}: {sum} % {basis}, above the limit on file for preserving, {limit:2} % ({row}). Other uses have rows of their own, which are not on file.",
			Help:  "if it is there to preserve, take less; if not, compare with the row of its use",
			Needs: "what {names} is in the formula for",
		},
		"barred": {
			Text: "Not allowed in {where}: {names} ({row}).",
			Help: "choose another preservative; compare with the legal text in force",
		},
		"within":      {Text: "{names}: {sum} % {basis}, within the limit on file of {limit:2} % ({row}, {use})."},
		"not-on-file": {Text: "{n} of {m} preservatives here have a row on file. Not judged: {names}."},
		"no-market":   {Text: "The rows on file are of the EU; the sheet is for {markets}. Not judged: {names}."},
	},
	Check:    judgePreservatives,
	Examples: preservativeExamples,
})

func judgePreservatives(s *Subject, r *Report) {
	x := preservatives()
	if m := s.Formula.Markets; len(m) > 0 && !slices.Contains(m, "eu") {
		if names := listed(s, x, true); r.All() && len(names) > 0 {
			r.NotJudged(Note{Say: "no-market", Args: Args{"markets": m, "names": names}})
		}
		return
	}
	sums := x.sums(s)
	for n := range x.entries {
		if sums[n].Typical > 0 {
			judgeEntry(s, r, x.entries[n], sums[n])
		}
	}
	if !r.All() {
		return
	}
	if without := listed(s, x, false); len(without) > 0 {
		with := len(listed(s, x, true))
		r.NotJudged(Note{Say: "not-on-file", Args: Args{"n": with, "m": with + len(without), "names": without}})
	}
}

// judgeEntry compares one entry's sum with the rows the product comes under.
func judgeEntry(s *Subject, r *Report, entry []refdata.PreservativeLimit, sum levigate.Range) {
	e := &entry[0]
	uses := UsesOf(s.Formula.Product)
	rows := rowsFor(entry, uses)
	low, high := math.Inf(1), math.Inf(-1)
	for _, row := range rows {
		low, high = math.Min(low, row.Limit), math.Max(high, row.Limit)
	}
	where := s.barred(e.NotIn)
	const grain = 1e-9 // floating dust, not a tolerance
	if !r.All() && where == "" && (len(rows) == 0 || sum.High <= low+grain) {
		return
	}
	brought, incis := bringers(s, e)
	n := Note{Row: "V/" + e.Entry, Mark: e.From.Mark, Sources: []cite.Ref{e.From.From}, At: atLines(brought.lines),
		Args: Args{"names": incis}}
	switch {
	case where != "":
		n.Say, n.Args["where"], n.Args["row"] = "barred", where, n.Row
		r.Broken(n)
		return
	case len(rows) == 0:
		return // named among those not judged
	}
	n.Args["sum"], n.Args["basis"], n.Args["limit"], n.Args["row"] = bandOfRange(sum, quantity.Percent), "as it is", low, n.Row
	if e.As != "" {
		n.Args["basis"] = "as " + e.As
	}
	switch {
	case sum.High <= low+grain:
		n.Say, n.Args["use"] = "within", uses
		r.Holds(n)
	case sum.Low > low+grain && hasOtherUses(e) && !brought.preserving:
		n.Say = "other-use"
		r.CannotTell(n)
	case sum.Low > high+grain:
		n.Say, n.Args["use"], n.Args["limit"] = "above", uses, high
		n.Args["most"], n.Args["bound"] = brought.parts, brought.scaled(s, high/sum.Typical)
		r.Broken(n)
	case low < high && sum.Low > low+grain:
		n.Say, n.Args["highest"] = "use-unknown", high
		r.CannotTell(n)
	default:
		n.Say, n.Args["use"], n.Args["lines"] = "cannot-tell", uses, s.Names(brought.lines)
		r.CannotTell(n)
	}
}

// brought is the lines an entry comes from.
type brought struct {
	lines      []int
	parts      []Part // what each brings, as the row counts it
	preserving bool   // one of them is in the formula as a preservative
}

func bringers(s *Subject, e *refdata.PreservativeLimit) (b brought, incis []string) {
	for i, m := range s.Materials() {
		var sum float64
		for _, share := range m.Declared {
			if slices.ContainsFunc(e.Substances, func(l refdata.LimitedSubstance) bool { return l.INCI == share.INCI }) {
				sum += s.Grams(i) * share.Percent.Typical / 100 * factor(e, share.INCI)
				if !slices.Contains(incis, share.INCI) {
					incis = append(incis, share.INCI)
				}
			}
		}
		if sum > 0 {
			b.lines, b.parts = append(b.lines, i), append(b.parts, Part{s.Name(i), sum})
			b.preserving = b.preserving || m.HasRole("preservative")
		}
	}
	return b, incis
}

// scaled is the most of each line in the same proportion, rounded down so that
// two decimals still lie within.
func (b brought) scaled(s *Subject, by float64) []Part {
	out := make([]Part, len(b.lines))
	for k, i := range b.lines {
		out[k] = Part{s.Name(i), math.Floor(s.Grams(i)*by*100+1e-6) / 100}
	}
	return out
}

// listed names the preservatives in the formula that have a row for its use, or
// that have none.
func listed(s *Subject, x *preservativeIndex, row bool) []string {
	var out []string
	for i := range s.Composition.Contained {
		c := &s.Composition.Contained[i]
		n, known := x.of[c.INCI]
		has := known && len(rowsFor(x.entries[n], UsesOf(s.Formula.Product))) > 0
		if has == row && (known || c.Substance.Is("preservative")) {
			out = append(out, c.INCI)
		}
	}
	return out
}
