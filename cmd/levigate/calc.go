package main

import (
	"fmt"
	"strings"

	"levigate"
	"levigate/internal/program"
	"levigate/wire"
	"levigate/work"
	"levigate/work/render"
)

type calcCommand struct {
	Name    string   `arg:"" optional:"" help:"What to calculate; --list names them."`
	Inputs  []string `arg:"" optional:"" name:"key=value" help:"Plain numbers in the unit that --list prints, or with one: t=77F, w=0.4g/g."`
	List    bool     `help:"Print what can be calculated, with keys, units and ranges; with NAME, only that."`
	Format  string   `enum:"text,json" default:"text" help:"text or json. JSON is an array of figures, the answer first."`
	Working bool     `help:"Put the working into the JSON too; text always shows it."`
}

func (calcCommand) Help() string {
	return "Example: levigate calc water.gab m0=0.0355 c=14.42 k=0.814 activity=0.575\n\n" +
		"A key left out takes the default that --list prints, and the working says so." + exitHelp
}

// Run answers one question, or lists what can be asked.
func (c *calcCommand) Run(s *session) error {
	if c.List {
		return c.list(s)
	}
	if c.Name == "" {
		return &levigate.Error{Code: levigate.Invalid, Message: "calc needs the name of what to calculate", Help: "levigate calc --list names them"}
	}
	figures, err := s.Calc(c.Name, c.Inputs)
	if err != nil {
		return err
	}
	if c.Format == "json" {
		out := make([]wire.Figure, len(figures))
		for i := range figures {
			if out[i] = wire.FigureOf(&figures[i]); !c.Working {
				out[i].Working = nil
			}
		}
		return encode(s, out)
	}
	for i := range figures {
		fmt.Fprint(s.out, render.Text(&figures[i], width))
	}
	return nil
}

func (c *calcCommand) list(s *session) error {
	found := false
	for _, m := range program.Calcs() {
		if c.Name != "" && !strings.EqualFold(m.ID, c.Name) {
			continue
		}
		if found {
			fmt.Fprintln(s.out)
		}
		found = true
		printCalc(s, m)
	}
	if !found {
		_, err := s.Calc(c.Name, nil) // says so, with the nearest names
		return err
	}
	return nil
}

func printCalc(s *session, m *work.Method) {
	unit := strings.TrimSpace(render.Suffix(m.Unit))
	if unit == "" {
		unit = "a plain number"
	}
	fmt.Fprintf(s.out, "%s\n", m.ID)
	fmt.Fprint(s.out, render.Prose(m.Title+", in "+unit, width, "  ", "  "))
	fmt.Fprint(s.out, render.Table(program.Symbols(m), width, "  "))
}
