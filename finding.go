package levigate

import "levigate/cite"

// Severity says what a finding asks for.
type Severity string

// The severities.
const (
	Stop   Severity = "stop"   // must be settled before release
	Warn   Severity = "warn"   // must be answered
	Advice Severity = "advice" // may be ignored
)

// Verdict is a rule's answer for one place.
type Verdict string

// The verdicts. Holds and NotJudged are shown only when asked for.
const (
	Holds      Verdict = "holds"
	Broken     Verdict = "broken"
	CannotTell Verdict = "cannot-tell"
	NotJudged  Verdict = "not-judged"
)

// Finding is one thing a rule has to say. Text says what is wrong, Help what
// to do, Needs which measurement would settle it.
type Finding struct {
	Rule     string
	Row      string // the row of a table rule
	Name     string
	Severity Severity
	Verdict  Verdict
	At       []string // "lines/3", "phases/B", "figures/water.activity"
	Text     string
	Help     string
	Needs    string
	Args     map[string]any
	Sources  []cite.Ref
}

// Blocks reports whether the finding blocks release.
func (f *Finding) Blocks() bool { return f.Severity == Stop && f.Verdict == Broken }
