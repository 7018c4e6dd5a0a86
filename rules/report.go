package rules

import (
	"strconv"

	"levigate"
	"levigate/cite"
)

// Note is what a check hands in.
type Note struct {
	Say     string            // key of the rule's message
	At      []string          // "lines/3", "figures/water.activity"
	Args    Args              // raw values; the template says how they are printed
	Row     string            // the row of a table rule
	Level   levigate.Severity // less than the rule's own; empty is the rule's own
	Mark    cite.Mark         // of the limit row it rests on
	Sources []cite.Ref        // in place of the rule's own
}

// Args are a message's named arguments.
type Args = map[string]any

// Report collects what one run of rules has to say.
type Report struct {
	rule     *Rule
	all      bool
	shows    bool // the rule under way has said something that is shown
	findings []levigate.Finding
	watch    func(*Rule, Note) // sees every note handed in; nil outside the proof
}

// All reports whether rows that hold or were not judged are wanted; checks
// guard their notes with it, since most of a run is rows that hold.
func (r *Report) All() bool { return r.all }

// Broken hands in a note on a limit passed or a thing that should not be.
func (r *Report) Broken(n Note) { r.add(levigate.Broken, n) }

// CannotTell hands in a note on a band that holds the limit.
func (r *Report) CannotTell(n Note) { r.add(levigate.CannotTell, n) }

// Holds hands in a note on a row that holds; kept only when asked for.
func (r *Report) Holds(n Note) { r.add(levigate.Holds, n) }

// NotJudged hands in a note on a row that lacks what it needs; kept only when
// asked for.
func (r *Report) NotJudged(n Note) { r.add(levigate.NotJudged, n) }

func (r *Report) add(v levigate.Verdict, n Note) {
	if r.watch != nil {
		r.watch(r.rule, n)
	}
	quiet := v == levigate.Holds || v == levigate.NotJudged
	if quiet && !r.all {
		return
	}
	r.shows = r.shows || !quiet
	sources := n.Sources
	if sources == nil {
		sources = r.rule.Sources
	}
	m := r.rule.Messages[n.Say]
	r.findings = append(r.findings, levigate.Finding{
		Rule: r.rule.ID, Row: n.Row, Name: r.rule.Name, Severity: severity(r.rule, v, n), Verdict: v, At: n.At,
		Text: fill(m.Text, n.Args), Help: fill(m.Help, n.Args), Needs: fill(m.Needs, n.Args), Args: n.Args, Sources: sources,
	})
}

// severity is what a note may say. A stop rests on arithmetic or on a limit row
// that was read, and on a clear answer; anything less warns.
func severity(r *Rule, v levigate.Verdict, n Note) levigate.Severity {
	level := n.Level
	if level == "" {
		level = r.Severity
	}
	if level == levigate.Stop && (v == levigate.CannotTell || !r.Arithmetic && n.Mark != cite.Read) {
		return levigate.Warn
	}
	return level
}

// atLine points at a line, counted from 0.
func atLine(line int) string { return "lines/" + strconv.Itoa(line) }

// atLines points at several lines.
func atLines(lines []int) []string {
	out := make([]string, len(lines))
	for i, line := range lines {
		out[i] = atLine(line)
	}
	return out
}

// atFigure points at a figure.
func atFigure(id string) string { return "figures/" + id }
