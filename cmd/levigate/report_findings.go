package main

import (
	"fmt"
	"strings"

	"levigate"
	"levigate/wire"
	"levigate/work/render"
)

// group is one kind of finding: its sign, its word, and what it asks for. The
// sign and the word tell it without colour.
type group struct {
	sign, word string
	paint      func(ink, string) string
	of         func(*levigate.Finding) bool
}

func shows(v levigate.Verdict, s levigate.Severity) func(*levigate.Finding) bool {
	return func(f *levigate.Finding) bool { return f.Verdict == v && (s == "" || f.Severity == s) }
}

var groups = []group{
	{"■", "stop", ink.red, shows(levigate.Broken, levigate.Stop)},
	{"▲", "answer", ink.amber, shows(levigate.Broken, levigate.Warn)},
	{"○", "advice", ink.plain, shows(levigate.Broken, levigate.Advice)},
	{"◆", "cannot tell", ink.plain, shows(levigate.CannotTell, "")},
	{"·", "holds", ink.plain, shows(levigate.Holds, "")},
	{"·", "not judged", ink.plain, shows(levigate.NotJudged, "")},
}

// findings prints what the rules have to say, the gravest first.
func (r report) findings(a *levigate.Assessment) {
	r.head("Findings")
	none := true
	for _, g := range groups {
		for i := range a.Findings {
			if f := &a.Findings[i]; g.of(f) {
				r.finding(g, f)
				none = false
			}
		}
	}
	if none {
		fmt.Fprintln(r, "  No rule on file has anything to say. That is not the same as nothing being wrong.")
	}
}

func (r report) finding(g group, f *levigate.Finding) {
	mark := g.sign + " " + g.word + " " + f.Rule + ":"
	text := render.Prose(mark+" "+f.Text, width, "", "  ")
	fmt.Fprint(r, g.paint(r.ink, mark)+strings.TrimPrefix(text, mark))
	if f.Help != "" {
		fmt.Fprint(r, render.Prose("help: "+f.Help, width, "  ", "    "))
	}
	if f.Needs != "" {
		fmt.Fprint(r, render.Prose("needs: "+f.Needs, width, "  ", "    "))
	}
	var at []string
	for _, place := range f.At {
		at = append(at, wire.Place(place))
	}
	if len(at) > 0 {
		fmt.Fprint(r, render.Prose("at: "+strings.Join(at, " "), width, "  ", "    "))
	}
}
