package rules

import (
	"fmt"
	"slices"
	"strings"

	"levigate"
	"levigate/cite"
)

// Page is a rule as one reads it: the command line, the bench and the generated
// pages print the same one.
type Page struct {
	ID, Name, Title string
	Lead            string
	Sections        []Section
}

// Section is a heading with lines under it. Mono lines are messages, printed as
// they stand.
type Section struct {
	Title string
	Lines []string
	Mono  bool
}

// Page makes the rule's page.
func (r *Rule) Page() Page {
	p := Page{ID: r.ID, Name: r.Name, Title: r.Title, Lead: r.lead()}
	add := func(title string, mono bool, lines ...string) {
		if len(lines) > 0 {
			p.Sections = append(p.Sections, Section{title, lines, mono})
		}
	}
	add("Why", false, r.Why)
	add("Limits on file", false, r.limitLines()...)
	add("Sources", false, sourceLines(r.Sources)...)
	for i := range r.Examples {
		e := &r.Examples[i]
		says := e.Want
		if says == "" {
			says = "(says nothing)\n"
		}
		title := "Example: " + e.Name
		if e.All {
			title += " (rows that hold asked for)"
		}
		add(title, true, strings.Split(strings.TrimSuffix(says, "\n"), "\n")...)
	}
	return p
}

// meanings says what each severity asks for.
var meanings = map[levigate.Severity]string{
	levigate.Stop:   "must be settled before release",
	levigate.Warn:   "must be answered",
	levigate.Advice: "may be ignored",
}

func (r *Rule) lead() string {
	text := fmt.Sprintf("%s. At most %s: %s.", r.Topic(), r.Severity, meanings[r.Severity])
	if len(r.After) > 0 {
		text += " Quiet while " + strings.Join(r.After, " or ") + " is open."
	}
	return text + " Since " + r.Since + "."
}

func (r *Rule) limitLines() []string {
	var out []string
	for _, ref := range r.Limits {
		rows, err := limitRows(ref)
		if err != nil {
			panic("rules: " + r.ID + ": " + err.Error()) // proved for every rule
		}
		for _, l := range rows {
			out = append(out, fmt.Sprintf("%s: %s [%s; %s]", l.Row, l.Text, l.Mark, l.Source))
		}
	}
	return out
}

func sourceLines(refs []cite.Ref) []string {
	out := make([]string, len(refs))
	for i, ref := range refs {
		out[i] = ref.String()
		if s, ok := cite.Find(ref.Key); ok {
			out[i] += " [" + s.Mark.String() + "]"
		}
	}
	slices.Sort(out)
	return out
}

// Explain is a rule's page in plain text, by number or name. A retired number
// is explained too.
func Explain(id string) (string, bool) {
	if why, gone := retired[strings.ToUpper(id)]; gone {
		return strings.ToUpper(id) + "\n\nRetired: " + why + "\n", true
	}
	r, ok := Find(id)
	if !ok {
		return "", false
	}
	p := r.Page()
	var b strings.Builder
	fmt.Fprintf(&b, "%s %s\n%s\n\n%s\n", p.ID, p.Name, p.Title, p.Lead)
	for _, s := range p.Sections {
		fmt.Fprintf(&b, "\n%s\n", s.Title)
		for _, line := range s.Lines {
			fmt.Fprintf(&b, "  %s\n", line)
		}
	}
	return b.String(), true
}
