package rules

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"

	"levigate"
	"levigate/cite"
)

// faults lists what is wrong with a rule; none means it is proved. It returns
// words instead of failing a test, so that the harness itself can be shown
// rules it must reject.
func faults(r *Rule) []string {
	var out []string
	say := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	if !regexp.MustCompile(`^[CWMSL]\d\d$`).MatchString(r.ID) {
		say("%q is no number: a letter of C, W, M, S, L and two digits", r.ID)
	}
	if !regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`).MatchString(r.Name) {
		say("name %q: lower case with hyphens", r.Name)
	}
	if r.Title == "" || r.Why == "" || r.Since == "" || r.Check == nil {
		say("a title, a why, a since and a check are needed")
	}
	if len(r.Sources) == 0 {
		say("a source is needed; trade-practice, recalled and levigate-judgement are answers")
	}
	for _, ref := range r.Sources {
		if _, ok := cite.Find(ref.Key); !ok {
			say("source %q is not in the bibliography", ref.Key)
		}
	}
	for _, ref := range r.Limits {
		if _, err := limitRows(ref); err != nil {
			say("limit: %v", err)
		}
	}
	switch r.Severity {
	case levigate.Stop:
		if !r.Arithmetic && len(r.Limits) == 0 {
			say("a stop rests on arithmetic or on a limit row; this one warns at most")
		}
	case levigate.Warn, levigate.Advice:
	default:
		say("severity %q is none of stop, warn, advice", r.Severity)
	}
	for _, id := range r.After {
		if _, ok := Find(id); !ok {
			say("After names %s, which is no rule", id)
		}
	}
	for _, word := range NeverSaid(r.Title + "\n" + r.Why) {
		say("title or why says %q", word)
	}
	for key, m := range r.Messages {
		if m.Text == "" {
			say("message %s has no text", key)
		}
		for _, word := range NeverSaid(m.Text + "\n" + m.Help + "\n" + m.Needs) {
			say("message %s says %q", key, word)
		}
	}
	if r.Check != nil {
		out = append(out, exampleFaults(r)...)
	}
	return out
}

// exampleFaults runs every example and compares the whole message; and holds
// the arguments handed in against those the message uses.
func exampleFaults(r *Rule) []string {
	var out []string
	say := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	spoken := map[string]bool{}
	speaks, silent := false, false
	sides := map[Side]levigate.Verdict{}
	for i := range r.Examples {
		e := &r.Examples[i]
		watch := func(by *Rule, n Note) {
			if by != r {
				return
			}
			spoken[n.Say] = true
			m, ok := r.Messages[n.Say]
			if !ok {
				say("example %q: no message %q", e.Name, n.Say)
				return
			}
			used := m.arguments()
			for name := range used {
				if _, handed := n.Args[name]; !handed {
					say("example %q: message %s uses {%s}, which was not handed in", e.Name, n.Say, name)
				}
			}
			for name := range n.Args {
				if !used[name] {
					say("example %q: message %s was handed %s and does not use it", e.Name, n.Say, name)
				}
			}
		}
		findings := e.run(r, watch)
		if got := Print(findings); got != e.Want {
			say("example %q says\n%s\nwant\n%s", e.Name, got, e.Want)
		}
		for _, word := range NeverSaid(Print(findings)) {
			say("example %q says %q", e.Name, word)
		}
		shown := verdict(r, findings)
		speaks = speaks || shown != levigate.Holds
		silent = silent || shown == levigate.Holds
		if e.Shows != "" {
			sides[e.Shows] = shown
		}
	}
	if !speaks || !silent {
		say("one example that speaks and one that is silent are needed")
	}
	for key := range r.Messages {
		if !spoken[key] {
			say("no example says message %s", key)
		}
	}
	return append(out, sideFaults(r, sides)...)
}

// verdict is what a rule's findings come to; Holds when nothing shows.
func verdict(r *Rule, findings []levigate.Finding) levigate.Verdict {
	out := levigate.Holds
	for _, f := range findings {
		switch {
		case f.Rule != r.ID:
		case f.Verdict == levigate.Broken:
			return levigate.Broken
		case f.Verdict == levigate.CannotTell:
			out = levigate.CannotTell
		}
	}
	return out
}

// sideFaults asks a rule that compares for an example on each side of its
// limit, and that the two sides differ.
func sideFaults(r *Rule, sides map[Side]levigate.Verdict) []string {
	if r.Compares == Nothing {
		return nil
	}
	var out []string
	wanted := []Side{Over, Under, On}
	if r.Compares == Banded {
		wanted = append(wanted, Straddles)
	}
	for _, side := range wanted {
		if _, ok := sides[side]; !ok {
			out = append(out, fmt.Sprintf("no example shows the limit from %s", side))
		}
	}
	if slices.Contains(slices.Collect(maps.Keys(sides)), Straddles) && sides[Straddles] != levigate.CannotTell {
		out = append(out, "the example that straddles the limit gets a clear answer")
	}
	over, under := sides[Over], sides[Under]
	if over == under || over == levigate.CannotTell || under == levigate.CannotTell {
		out = append(out, fmt.Sprintf("over the limit it answers %s and under it %s", over, under))
	}
	return out
}

// has reports whether one of the faults holds every one of the words.
func has(faults []string, words ...string) bool {
	return slices.ContainsFunc(faults, func(f string) bool {
		for _, w := range words {
			if !strings.Contains(f, w) {
				return false
			}
		}
		return true
	})
}
