// Package rules judges a formula check: it compares figures with limits whose
// source is on file and says, in words, what it sees.
//
// A rule is one file: number, name, why, severity, limits, check, messages and
// examples. The examples are its test and its page. Registering is a
// package-level variable in that file, so adding a rule edits no list
// (go run ./tools/newrule W09 name writes the skeleton).
//
// A number is a letter for the topic and two digits: C composition, W water, M
// materials, S structure, L label. It is never used twice; retired.go keeps
// those that went.
//
// Calculation computes, rules judge, people decide: a rule never says that a
// product is fit for anything (words.go lists what is never printed).
//
// Glossary: a note is what a check hands in; a finding is the note with its
// text filled in; a row is one line of a table rule; a limit is a number with
// its source, kept in refdata.
package rules
