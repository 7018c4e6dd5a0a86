package rules

import (
	"slices"
	"strings"
	"sync"

	"levigate"
)

// Judge runs all rules over a formula check and returns their findings in
// number order. With all it adds the rows that hold and those not judged.
func Judge(a *levigate.Assessment, all bool) []levigate.Finding {
	return everything().judge(a, all).findings
}

var everything = sync.OnceValue(func() plan { return arrange(All()) })

// plan is rules in the order they run: each after its root causes.
type plan []step

type step struct {
	rule   *Rule
	causes []int // places in the plan of the rules named in After
}

// arrange puts each rule behind the rules it names in After; otherwise number
// order stays. A rule named but not given counts as silent, and a circle is a
// programmer's slip.
func arrange(rules []*Rule) plan {
	var p plan
	place := map[string]int{}
	const under = -1
	var visit func(r *Rule)
	visit = func(r *Rule) {
		if at, seen := place[r.ID]; seen {
			if at == under {
				panic("rules: " + r.ID + " comes after itself")
			}
			return
		}
		place[r.ID] = under
		var causes []int
		for _, id := range r.After {
			if i := slices.IndexFunc(rules, func(c *Rule) bool { return c.ID == id }); i >= 0 {
				visit(rules[i])
				causes = append(causes, place[id])
			}
		}
		place[r.ID] = len(p)
		p = append(p, step{r, causes})
	}
	for _, r := range rules {
		visit(r)
	}
	return p
}

func (p plan) judge(a *levigate.Assessment, all bool) *Report {
	r := &Report{all: all}
	p.run(a, r)
	return r
}

func (p plan) run(a *levigate.Assessment, r *Report) {
	s := &Subject{a}
	// open[i] is the rule that shows at place i of the plan: the rule itself, or
	// the root cause that keeps it quiet.
	open := make([]*Rule, len(p))
	for i := range p {
		r.rule, r.shows = p[i].rule, false
		for _, c := range p[i].causes {
			if open[i] == nil {
				open[i] = open[c]
			}
		}
		if open[i] != nil {
			r.keepQuiet(open[i])
			continue
		}
		if r.rule.Check(s, r); r.shows {
			open[i] = r.rule
		}
	}
	r.sort()
}

// keepQuiet leaves word, for who asks for all, of why a rule was not run.
func (r *Report) keepQuiet(cause *Rule) {
	if !r.all {
		return
	}
	r.findings = append(r.findings, levigate.Finding{
		Rule: r.rule.ID, Name: r.rule.Name, Severity: r.rule.Severity, Verdict: levigate.NotJudged,
		Text: "Not judged while " + cause.ID + " (" + cause.Name + ") is open.", Sources: r.rule.Sources,
	})
}

// sort brings the findings back into number order where After changed it.
func (r *Report) sort() {
	byNumber := func(a, b levigate.Finding) int { return strings.Compare(a.Rule, b.Rule) }
	if !slices.IsSortedFunc(r.findings, byNumber) {
		slices.SortStableFunc(r.findings, byNumber)
	}
}

// JudgeBy runs one rule by its number, for a paper that needs no more than what
// the rule says of the formula. A number no rule has is a programmer's slip.
func JudgeBy(a *levigate.Assessment, id string) []levigate.Finding {
	r, ok := Find(id)
	if !ok {
		panic("rules: no rule " + id)
	}
	return arrange([]*Rule{r}).judge(a, false).findings
}
