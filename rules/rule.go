package rules

import (
	"levigate"
	"levigate/cite"
)

// Rule is one declared judgement.
type Rule struct {
	ID    string // "W02": letter of the topic, two digits
	Name  string // "wet-no-preservation-plan"
	Title string // a line for a list
	Why   string // what goes wrong in the world when the rule is broken
	Since string // the release it came with

	// Severity is the most the rule may say. A note may say less. Stop is
	// granted to arithmetic and to limit rows marked read; anything else warns.
	Severity   levigate.Severity
	Arithmetic bool

	// After names the rules that are this one's root cause: while one of them
	// has something to say, this one keeps quiet.
	After []string

	Sources []cite.Ref
	// Limits names the rows of refdata the check compares with.
	Limits []string
	// Compares says what kind of number is held against the limit; it decides
	// which examples the rule must show.
	Compares Compares

	// Messages holds what the rule can say, by key.
	Messages map[string]Message
	Check    func(s *Subject, r *Report)
	Examples []Example
}

// Compares tells apart what a rule holds against its limit.
type Compares uint8

// A rule that compares shows an example over, under and on the limit; with a
// band also one that straddles it.
const (
	Nothing Compares = iota // the rule looks for presence
	Exact                   // a number without a band: a percentage, a temperature
	Banded                  // a figure
)

// Message is a template in English. {name} stands for an argument, {name:2}
// for one with two decimals, {name:2 g} for a list whose numbers carry a unit.
type Message struct {
	Text  string // what is wrong
	Help  string // what to do
	Needs string // which measurement would settle it
}

// Topic is what the letter of a number stands for.
func (r *Rule) Topic() string { return topics[r.ID[:1]] }

var topics = map[string]string{
	"C": "Composition",
	"W": "Water",
	"M": "Materials",
	"S": "Structure",
	"L": "Label",
}
