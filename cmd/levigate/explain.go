package main

import (
	"fmt"
	"strings"

	"levigate"
	"levigate/work"
	"levigate/work/render"
)

type explainCommand struct {
	ID   string `arg:"" optional:"" help:"A figure, method, rule, table, raw material or substance: water.activity, water.gab, W01, limits/growth, GLY-99, Glycerin."`
	List bool   `help:"Print every name that can be explained."`
}

func (explainCommand) Help() string { return strings.TrimSpace(exitHelp) }

// Run explains one name, or lists them all.
func (c *explainCommand) Run(s *session) error {
	if c.List {
		t := work.Table{Head: []string{"name", "is a"}}
		for _, e := range s.Explains() {
			t.Rows = append(t.Rows, []string{e[0], e[1]})
		}
		fmt.Fprint(s.out, render.Table(&t, width, ""))
		return nil
	}
	if c.ID == "" {
		return &levigate.Error{Code: levigate.Invalid, Message: "explain needs a name", Help: "levigate explain --list names everything"}
	}
	x, err := s.Explain(c.ID)
	if err != nil {
		return err
	}
	ink := inkFor(s.out)
	fmt.Fprintf(s.out, "%s\n%s %s\n", ink.bold(x.Title), x.Kind, x.ID)
	for _, part := range x.Sections {
		fmt.Fprintln(s.out)
		indent := ""
		if part.Head != "" {
			fmt.Fprintln(s.out, ink.bold(part.Head))
			indent = "  "
		}
		if part.Text != "" {
			fmt.Fprint(s.out, render.Prose(part.Text, width, indent, indent))
		}
		for _, item := range part.Items {
			fmt.Fprint(s.out, render.Prose(item, width, indent, indent+"  "))
		}
		if part.Table != nil {
			fmt.Fprint(s.out, render.Table(part.Table, width, indent))
		}
	}
	return nil
}
