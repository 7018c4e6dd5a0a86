package main

import (
	"strings"

	"levigate/rules"
)

// rulesPage lists the rules and prints each one's page, the same that the
// command line and the bench show.
func rulesPage() string {
	s := newSheet("Rules")
	s.paragraph("A rule compares a figure with a limit whose source is on file and gives one of three answers: " +
		"below or above the limit, or cannot tell. Stop must be settled before release, warn must be answered, advice may be ignored. " +
		"A stop rests on arithmetic or on a limit that was read in its source; one that cannot tell is shown as a warning. " +
		"The examples are the rules' tests.")
	var rows [][]string
	for _, r := range rules.All() {
		rows = append(rows, []string{r.ID, r.Name, string(r.Severity), r.Title})
	}
	s.table([]string{"Number", "Name", "At most", "What"}, rows)
	for _, r := range rules.All() {
		p := r.Page()
		s.heading(2, "%s %s", p.ID, p.Name)
		s.paragraph("**%s.** %s", inline(p.Title), inline(p.Lead))
		for _, section := range p.Sections {
			switch {
			case section.Mono:
				s.paragraph("%s:", inline(section.Title))
				s.mono(section.Lines)
			case len(section.Lines) == 1:
				s.paragraph("%s: %s", section.Title, inline(section.Lines[0]))
			default:
				s.paragraph("%s:", section.Title)
				s.list(section.Lines)
			}
		}
	}
	return s.String()
}

// messagesPage is the gallery: everything the rules say in their examples, so
// that a change of wording is read as a difference of one page.
func messagesPage() string {
	s := newSheet("Messages")
	s.paragraph("Everything the rules say in their own examples.")
	for _, r := range rules.All() {
		s.heading(2, "%s %s", r.ID, r.Title)
		for i := range r.Examples {
			e := &r.Examples[i]
			text := rules.Print(e.Run(r))
			if text == "" {
				continue
			}
			s.paragraph("%s:", inline(e.Name))
			s.mono(strings.Split(strings.TrimSuffix(text, "\n"), "\n"))
		}
	}
	return s.String()
}
