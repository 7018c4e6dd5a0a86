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

// stops names, before all figures, what must be settled before release.
func (r report) stops(a *levigate.Assessment) {
	for i := range a.Findings {
		if f := &a.Findings[i]; f.Blocks() {
			mark := groups[0].sign + " must be settled before release:"
			text := render.Prose(mark+" "+strings.TrimSuffix(f.Rule+", "+f.Name+", "+places(f.At), ", "), width, "", "  ")
			fmt.Fprint(r, "\n"+r.ink.red(mark)+strings.TrimPrefix(text, mark))
		}
	}
}

// findings prints what the rules have to say, the gravest first. Where several
// rows of one rule give the same help it stands under the last of them.
func (r report) findings(a *levigate.Assessment) {
	r.head("Findings")
	var shown []*levigate.Finding
	for _, g := range groups {
		first := len(shown)
		for i := range a.Findings {
			if f := &a.Findings[i]; g.of(f) {
				shown = append(shown, f)
			}
		}
		for i, f := range shown[first:] {
			next := first + i + 1
			again := next < len(shown) && shown[next].Rule == f.Rule && shown[next].Help == f.Help && f.Row != ""
			r.finding(g, f, !again)
		}
	}
	if len(shown) == 0 {
		fmt.Fprintln(r, "  No rule on file has anything to say. That is not the same as nothing being wrong.")
	}
}

func (r report) finding(g group, f *levigate.Finding, whole bool) {
	mark := g.sign + " " + g.word + " " + f.Rule + ":"
	text := render.Prose(mark+" "+f.Text, width, "", "  ")
	fmt.Fprint(r, g.paint(r.ink, mark)+strings.TrimPrefix(text, mark))
	if !whole {
		return
	}
	for _, part := range [][2]string{{"help: ", f.Help}, {"needs: ", f.Needs}, {"at: ", places(f.At)}} {
		if part[1] != "" {
			fmt.Fprint(r, render.Prose(part[0]+part[1], width, "  ", "    "))
		}
	}
}

// places says where a finding points, in words: "lines 7, 8; water.activity".
func places(at []string) string {
	var numbers, out []string
	for _, place := range at {
		kind, name, _ := strings.Cut(wire.Place(place), "/")
		switch kind {
		case "lines":
			numbers = append(numbers, name)
		case "phases":
			out = append(out, "phase "+name)
		default:
			out = append(out, name)
		}
	}
	if len(numbers) > 0 {
		word := "line "
		if len(numbers) > 1 {
			word = "lines "
		}
		out = append([]string{word + strings.Join(numbers, ", ")}, out...)
	}
	return strings.Join(out, "; ")
}
