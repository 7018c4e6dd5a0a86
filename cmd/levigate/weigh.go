package main

import (
	"fmt"

	"levigate"
	"levigate/formulafile"
	"levigate/internal/program"
)

type weighCommand struct {
	File      string   `arg:"" name:"file" help:"Formula file; - reads the standard input."`
	Batch     string   `placeholder:"MASS" help:"How much to make: 500g, 5kg; left out, the formula's own batch."`
	Balance   []string `sep:"none" default:"0.01 g,2000 g,s=0.01 g" placeholder:"BALANCE" help:"A balance at hand: scale interval, capacity, then s= repeatability, tare= vessel, name=. May stand several times (default \"0.01 g,2000 g,s=0.01 g\")."`
	Tolerance string   `default:"2" placeholder:"PERCENT" help:"By how much a line may be off, in %% of itself (default 2)."`
	Format    string   `enum:"text,json,csv" default:"text" help:"text, json or csv."`
}

func (weighCommand) Help() string {
	return "Example: levigate weigh examples/HP-01.formula.yaml --batch 500g --balance \"0.01 g,2000 g,s=0.01 g\" --balance \"1 g,6 kg,tare=800 g\"\n\n" +
		"Each line goes on the finest balance that carries it and keeps its minimum weight. One line, the q.s. line where it can, " +
		"takes up what rounding the others left over, so that the list adds up to the batch. A line that no balance weighs is listed " +
		"with what to do; it does not change the exit status." + exitHelp
}

// Run makes one weighing list and prints it.
func (c *weighCommand) Run(s *session) error {
	file := program.File{Name: c.File}
	if c.File == "-" {
		var err error
		if file.Data, err = program.ReadUpTo(s.in, formulafile.MaxBytes+1); err != nil {
			return &levigate.Error{Code: levigate.Invalid, Message: "the standard input can't be read", Cause: err}
		}
	}
	w, err := s.Weigh(program.WeighInput{File: file, Batch: c.Batch, Balances: c.Balance, Tolerance: c.Tolerance})
	switch {
	case err != nil:
		return err
	case c.Format == "json":
		err = encode(s, s.WireWeighed(w))
	case w.List == nil:
		fmt.Fprint(s.err, formulafile.Format(w.Problems, w.File))
	case c.Format == "csv":
		err = printWeighingCSV(s.out, w.List)
	default:
		printWeighing(s.out, w.List)
	}
	if err == nil && w.List == nil {
		return stopped(statusUnread)
	}
	return err
}
