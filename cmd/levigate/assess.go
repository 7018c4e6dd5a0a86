package main

import (
	"fmt"
	"strings"

	"levigate"
	"levigate/formulafile"
	"levigate/internal/program"
	"levigate/quantity"
)

type assessCommand struct {
	Files       []string `arg:"" name:"file" help:"Formula files; - reads one from the standard input."`
	Format      string   `enum:"text,json" default:"text" help:"text or json. JSON is one object for one file, an array for more."`
	Temperature string   `default:"25" placeholder:"T" help:"What the check is made for: 25, 77F; from -15 to 60 °C (default 25)."`
	Humidity    string   `placeholder:"RH" help:"Also: what the product gains or loses in air of this relative humidity, in %."`
	Parts       []string `placeholder:"PART" help:"Only these parts: composition, water, structure, label."`
	Working     bool     `help:"Show how every figure came about."`
	All         bool     `help:"Also the rules that hold and the rows not judged."`
	Curves      bool     `help:"Print the moisture curve as a table; JSON always has the curves."`
}

func (assessCommand) Help() string { return strings.TrimSpace(exitHelp) }

// Run checks the files and prints what came of each, in the order given.
func (c *assessCommand) Run(s *session) error {
	in, err := c.input(s)
	if err != nil {
		return err
	}
	outcomes, err := s.Assess(s, in)
	if err != nil {
		return err
	}
	if c.Format == "json" {
		err = printJSON(s, outcomes)
	} else {
		c.printText(s, outcomes)
	}
	if err != nil {
		return err
	}
	return worst(outcomes)
}

// worst is the highest status of the files, as the error that ends the command.
func worst(outcomes []program.Outcome) error {
	status := statusDone
	for i := range outcomes {
		status = max(status, outcomeStatus(&outcomes[i]))
	}
	if status != statusDone {
		return stopped(status)
	}
	return nil
}

func outcomeStatus(o *program.Outcome) int {
	switch {
	case len(o.Problems) > 0:
		return statusUnread
	case o.Blocks():
		return statusBlocked
	}
	return statusDone
}

func (c *assessCommand) input(s *session) (program.Input, error) {
	in := program.Input{Parts: c.Parts, Curves: c.Curves || c.Format == "json", Working: c.Working, All: c.All}
	var err error
	if in.Conditions.Temperature, err = quantity.ParseIn(c.Temperature, quantity.Celsius); err != nil {
		return in, &levigate.Error{Code: levigate.Invalid, Message: "--temperature: " + err.Error(), Help: "write it like 25, 25C or 77F"}
	}
	if c.Humidity != "" {
		if in.Conditions.Humidity, err = quantity.ParseIn(strings.TrimSuffix(c.Humidity, "%"), quantity.Percent); err != nil {
			return in, &levigate.Error{Code: levigate.Invalid, Message: "--humidity: " + err.Error(), Help: "write it like 60"}
		}
	}
	stdin := false
	for _, name := range c.Files {
		file := program.File{Name: name}
		if name == "-" {
			if stdin {
				return in, &levigate.Error{Code: levigate.Invalid, Message: "the standard input is named twice", Help: "name - once"}
			}
			stdin = true
			if file.Data, err = program.ReadUpTo(s.in, formulafile.MaxBytes+1); err != nil {
				return in, &levigate.Error{Code: levigate.Invalid, Message: "the standard input can't be read", Cause: err}
			}
		}
		in.Files = append(in.Files, file)
	}
	return in, nil
}

// printText prints assessments on the output and what could not be read on
// the error output.
func (c *assessCommand) printText(s *session, outcomes []program.Outcome) {
	first := true
	for i := range outcomes {
		o := &outcomes[i]
		if o.Assessment == nil {
			fmt.Fprint(s.err, formulafile.Format(o.Problems, o.File))
			continue
		}
		if !first {
			fmt.Fprintln(s.out)
		}
		first = false
		newReport(s.out, c).print(o.Assessment)
	}
}
