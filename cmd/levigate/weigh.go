package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"levigate"
	"levigate/formulafile"
	"levigate/internal/program"
)

type weighCommand struct {
	File      string   `arg:"" name:"file" help:"Formula file; - reads the standard input."`
	Batch     string   `placeholder:"MASS" help:"How much to make: 500g, 5kg; left out, the formula's own batch."`
	Balance   []string `sep:"none" default:"0.01 g,2000 g,s=0.01 g" placeholder:"BALANCE" help:"A balance at hand: scale interval, capacity, then s= repeatability, tare= vessel, name=. May stand several times (default \"0.01 g,2000 g,s=0.01 g\")."`
	Tolerance string   `default:"2" placeholder:"PERCENT" help:"By how much a line may be off, in % of itself (default 2)."`
	Format    string   `enum:"text,json,csv,pdf" default:"text" help:"text, json, csv, or pdf: a paper for the bench."`
	Paper     string   `enum:"a4,letter" default:"a4" help:"Paper of the pdf: a4 or letter (default a4)."`
	Out       string   `placeholder:"FILE" help:"Write to this file; left out, to the standard output."`
}

func (weighCommand) Help() string {
	return "Example: levigate weigh examples/HP-01.formula.yaml --batch 500g --balance \"0.01 g,2000 g,s=0.01 g\" --balance \"1 g,6 kg,tare=800 g\"\n\n" +
		"levigate weigh examples/HP-01.formula.yaml --format pdf --out HP-01.pdf\n\n" +
		"Each line goes on the finest balance that carries it and keeps its minimum weight. One line, the q.s. line where it can, " +
		"takes up what rounding the others left over, so that the list adds up to the batch. A line that no balance weighs is listed " +
		"with what to do; it does not change the exit status." + exitHelp
}

// Run makes one weighing list and prints it.
func (c *weighCommand) Run(s *session) error {
	if err := c.outFits(s.out); err != nil {
		return err
	}
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
	case w.List != nil && c.Out != "":
		return writeFile(c.Out, func(out io.Writer) error { return c.print(s, out, w) })
	case w.List != nil:
		return c.print(s, s.out, w)
	case c.Format == "json":
		if err := encode(s, s.WireWeighed(w)); err != nil {
			return err
		}
	default:
		fmt.Fprint(s.err, formulafile.Format(w.Problems, w.File))
	}
	return stopped(statusUnread)
}

// outFits refuses, before anything is worked out, what is surely a slip.
func (c *weighCommand) outFits(out io.Writer) error {
	switch named := strings.EqualFold(filepath.Ext(c.Out), ".pdf"); {
	case c.Format == "pdf" && c.Out == "" && terminal(out):
		return &levigate.Error{Code: levigate.Invalid, Message: "a PDF is no text for a terminal", Help: "name a file with --out weighing.pdf, or send it on with > weighing.pdf"}
	case c.Format != "pdf" && named:
		return &levigate.Error{Code: levigate.Invalid, Message: fmt.Sprintf("--out %s is named as a PDF, but the format is %s", c.Out, c.Format), Help: "add --format pdf, or give the file another ending"}
	case c.Out != "" && sameFile(c.Out, c.File):
		return &levigate.Error{Code: levigate.Invalid, Message: "--out " + c.Out + " is the formula file itself", Help: "name another file"}
	}
	return nil
}

// print writes a list that could be made.
func (c *weighCommand) print(s *session, out io.Writer, w *program.Weighed) error {
	switch c.Format {
	case "json":
		return encodeTo(out, s.WireWeighed(w))
	case "csv":
		return printWeighingCSV(out, w.List)
	case "pdf":
		b, err := s.WeighedPDF(w, c.Paper)
		if err == nil {
			_, err = out.Write(b)
		}
		return err
	}
	printWeighing(out, w.List)
	return nil
}
