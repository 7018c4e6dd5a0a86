package program

import (
	"strings"

	"levigate"
	"levigate/rules"
)

// severityWords says what a severity asks of the maker.
var severityWords = map[levigate.Severity]string{
	levigate.Stop:   "stop: must be settled before release",
	levigate.Warn:   "answer: needs an answer before release",
	levigate.Advice: "advice: may be left",
}

// explainRule prints a rule's declaration with its examples, which are its
// tests too.
func explainRule(r *rules.Rule) Explanation {
	x := Explanation{Kind: "rule", ID: r.ID, Title: r.Title}
	x.Sections = append(x.Sections, Section{Text: r.Why},
		Section{Head: "At most", Text: severityWords[r.Severity]},
		Section{Head: "Name, topic, since", Text: r.Name + ", " + strings.ToLower(r.Topic()) + ", " + r.Since})
	if len(r.Limits) > 0 {
		x.Sections = append(x.Sections, Section{Head: "Limits on file", Items: r.Limits})
	}
	if len(r.After) > 0 {
		x.Sections = append(x.Sections, Section{Head: "Quiet while these are open", Items: r.After})
	}
	var items []string
	for i := range r.Examples {
		e := &r.Examples[i]
		said := "says nothing"
		if want := strings.TrimSpace(e.Want); want != "" {
			said, _, _ = strings.Cut(want, "\n")
		}
		items = append(items, e.Name+": "+said)
	}
	x.Sections = append(x.Sections, Section{Head: "Examples", Items: items})
	return sourced(x, r.Sources)
}
