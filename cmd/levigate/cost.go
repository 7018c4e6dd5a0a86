package main

import (
	"fmt"

	"levigate"
	"levigate/formulafile"
	"levigate/internal/program"
)

type costCommand struct {
	File   string `arg:"" name:"file" help:"Formula file; - reads the standard input."`
	Prices string `placeholder:"FILE" help:"Price list: comma, semicolon or tab separated text."`
	Fill   string `placeholder:"MASS" help:"Bulk in one unit, like 50g: what it costs by the unit."`
	Yield  string `placeholder:"PERCENT" help:"Bulk made, in % of what was weighed, like 92. Left out, 100 is taken and said."`
	On     string `placeholder:"DATE" help:"Cost with the prices known on this day, like 2026-03-09; left out, today."`
	Format string `enum:"text,json,csv" default:"text" help:"text, json or csv."`
}

func (costCommand) Help() string {
	return "Example: levigate cost examples/HP-01.formula.yaml --prices examples/prices.csv --fill 50g --yield 92\n\n" +
		"The first line of the price list names its columns, in any order: material, paid, currency, pack, date are needed; freight, " +
		"other, supplier, notes may be there. A line that begins with # is a remark. Of several prices for one raw material the newest " +
		"counts. A line without a price, or a second currency, leaves no total and does not change the exit status." + exitHelp
}

// Run costs one formula and prints it.
func (c *costCommand) Run(s *session) error {
	if c.Prices == "-" {
		return &levigate.Error{Code: levigate.Invalid, Message: "the price list is not read from the standard input", Help: "save it to a file and name that"}
	}
	file := program.File{Name: c.File}
	if c.File == "-" {
		var err error
		if file.Data, err = program.ReadUpTo(s.in, formulafile.MaxBytes+1); err != nil {
			return &levigate.Error{Code: levigate.Invalid, Message: "the standard input can't be read", Cause: err}
		}
	}
	w, err := s.Cost(program.CostInput{File: file, Prices: c.Prices, Fill: c.Fill, Yield: c.Yield, On: c.On})
	switch {
	case err != nil:
		return err
	case c.Format == "json":
		err = encode(s, s.WireCosted(w))
	case w.Costing == nil:
		fmt.Fprint(s.err, formulafile.Format(w.Problems, w.File)+formulafile.Format(w.Listed, w.Prices))
	case c.Format == "csv":
		err = printCostingCSV(s.out, s.err, w.Costing)
	default:
		printCosting(s.out, w.Costing)
	}
	if err == nil && w.Costing == nil {
		return stopped(statusUnread)
	}
	return err
}
