package rules

import (
	"strings"

	"levigate"
)

// Example is one case of a rule: its test, and a line of the gallery of
// messages.
type Example struct {
	Name  string
	Given func() *levigate.Assessment
	All   bool // ask for the rows that hold or were not judged, too
	Shows Side // which side of its limit a rule that compares shows
	Want  string
}

// Side is where an example stands to the rule's limit.
type Side string

// The sides. On the limit is whatever the limit's own wording makes of it.
const (
	Over      Side = "over"
	Under     Side = "under"
	On        Side = "on"
	Straddles Side = "straddles"
)

// Run judges the example with its rule and the rules named in After alone, so
// that a rule added later cannot upset an older one's examples.
func (e *Example) Run(r *Rule) []levigate.Finding {
	return e.run(r, nil)
}

func (e *Example) run(r *Rule, watch func(*Rule, Note)) []levigate.Finding {
	rules := []*Rule{}
	for _, id := range r.After {
		if cause, ok := Find(id); ok {
			rules = append(rules, cause)
		}
	}
	report := &Report{all: e.All, watch: watch}
	arrange(append(rules, r)).run(e.Given(), report)
	return report.findings
}

// Print writes findings the way examples and the gallery show them.
func Print(findings []levigate.Finding) string {
	var b strings.Builder
	for i := range findings {
		f := &findings[i]
		b.WriteString(f.Rule)
		if f.Row != "" {
			b.WriteString("/" + f.Row)
		}
		b.WriteString(" " + string(f.Severity))
		if f.Verdict != levigate.Broken {
			b.WriteString(", " + strings.ReplaceAll(string(f.Verdict), "-", " "))
		}
		b.WriteString(": " + f.Text + "\n")
		part(&b, "help", f.Help)
		part(&b, "needs", f.Needs)
		part(&b, "at", strings.Join(f.At, " "))
	}
	return b.String()
}

func part(b *strings.Builder, name, text string) {
	if text != "" {
		b.WriteString("  " + name + ": " + text + "\n")
	}
}
