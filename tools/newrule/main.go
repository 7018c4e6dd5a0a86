// Command newrule writes the skeleton of a rule. It compiles, and its test
// fails until it is filled in.
//
//	go run ./tools/newrule W09 wet-neck
package main

import (
	"fmt"
	"io"
	"os"
	"regexp"
	"strings"

	"levigate/rules"
	"levigate/tools/newrule/skeleton"
)

func main() {
	root, err := skeleton.Root()
	if err != nil {
		fmt.Fprintln(os.Stderr, "newrule:", err)
		os.Exit(1)
	}
	os.Exit(run(root, os.Args[1:], os.Stdout, os.Stderr))
}

func run(root string, args []string, out, log io.Writer) int {
	if len(args) != 2 {
		fmt.Fprintln(log, "usage: go run ./tools/newrule NUMBER name-with-hyphens")
		return 2
	}
	file, err := rule(args[0], args[1])
	if err == nil {
		err = skeleton.Write(root, file)
	}
	if err != nil {
		fmt.Fprintln(log, "newrule:", err)
		return 1
	}
	fmt.Fprintf(out, "wrote %s\nnext: fill it in until go test ./rules passes, then go run ./tools/gendocs\n", file.Path)
	return 0
}

var (
	number = regexp.MustCompile(`^[CWMSL]\d\d$`)
	named  = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)
)

// rule is the skeleton of a rule, refused when its number or name is taken.
func rule(id, name string) (skeleton.File, error) {
	id = strings.ToUpper(id)
	switch {
	case !number.MatchString(id):
		return skeleton.File{}, fmt.Errorf("%q is no number: a letter (C composition, W water, M materials, S structure, L label) and two digits", id)
	case !named.MatchString(name):
		return skeleton.File{}, fmt.Errorf("%q is no name: lower case with hyphens", name)
	}
	for _, taken := range []string{id, name} {
		if _, known := rules.Explain(taken); known {
			return skeleton.File{}, fmt.Errorf("%s is taken; go run ./cmd/levigate explain %s", taken, taken)
		}
	}
	path := "rules/" + strings.ToLower(id) + "_" + strings.ReplaceAll(name, "-", "_") + ".go"
	text := strings.NewReplacer("NUMBER", id, "NAME", name).Replace(template)
	return skeleton.File{Path: path, Text: text}, nil
}

const template = `package rules

import "levigate"

var _ = register(Rule{
	ID:    "NUMBER",
	Name:  "NAME",
	Title: "", // a line for a list: what is seen
	Why:   "", // what goes wrong in the world when nobody heeds it
	Since: "",

	// New rules begin as advice and are raised with evidence. Stop is for
	// arithmetic and for limits that were read.
	Severity: levigate.Advice,
	After:    nil, // rules whose finding is this one's root cause
	Sources:  nil, // trade-practice and levigate-judgement are answers
	Limits:   nil, // rows of refdata: "limits/criteria water.reserve-075"
	Compares: Nothing,

	Messages: map[string]Message{
		"seen": {
			Text: "", // what is wrong, with {name} and {share:2}
			Help: "", // what to do
		},
	},
	Check: func(s *Subject, r *Report) {
	},
	Examples: []Example{
		// One that speaks, one that is silent; over, under and on a limit, and
		// straddling it where a figure has a band.
		{Name: "", Given: sheet(line("100", "Glycerin")), Want: ""},
	},
})
`
