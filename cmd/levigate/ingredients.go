package main

import (
	"fmt"
	"strings"

	"levigate"
	"levigate/formulafile"
	"levigate/internal/program"
	"levigate/work"
	"levigate/work/render"
)

type ingredientsCommand struct {
	Files  []string `arg:"" name:"file" help:"Formula files; - reads one from the standard input."`
	Market []string `placeholder:"MARKET" help:"eu, gb or us; more with commas (default: what the formula names, else eu)."`
	Format string   `enum:"text,json,csv" default:"text" help:"text, json or csv. JSON is one object for one file, an array for more; CSV has one row a place."`
}

func (ingredientsCommand) Help() string {
	return "By falling weight as added, from what is declared; what may stand in any order comes behind, colourants last. " + program.Draft + exitHelp
}

// Run makes the ingredient lists of the files, in the order given.
func (c *ingredientsCommand) Run(s *session) error {
	read := assessCommand{Files: c.Files, Temperature: "25"} // files are named as for assess
	in, err := read.input(s)
	if err != nil {
		return err
	}
	outcomes, err := s.Ingredients(s, in.Files, c.Market)
	if err != nil {
		return err
	}
	switch c.Format {
	case "json":
		err = c.printJSON(s, outcomes)
	case "csv":
		err = ingredientsCSV(s, outcomes)
	default:
		c.printText(s, outcomes)
	}
	if err != nil {
		return err
	}
	return worst(outcomes)
}

func (c *ingredientsCommand) printJSON(s *session, outcomes []program.Outcome) error {
	all := make([]any, len(outcomes))
	for i := range outcomes {
		all[i] = s.WireIngredients(&outcomes[i])
	}
	if len(all) == 1 {
		return encode(s, all[0])
	}
	return encode(s, all)
}

func (c *ingredientsCommand) printText(s *session, outcomes []program.Outcome) {
	made := false
	for i := range outcomes {
		o := &outcomes[i]
		if o.Assessment == nil {
			fmt.Fprint(s.err, formulafile.Format(o.Problems, o.File))
			continue
		}
		made = true
		r := report{Writer: s.out, ink: inkFor(s.out)}
		r.ingredients(o.Assessment)
		fmt.Fprintln(s.out)
	}
	if made {
		fmt.Fprint(s.out, render.Prose(program.Draft, width, "", ""))
	}
}

// ingredients prints one formula's lists: the line for the pack, then the
// shares behind it, then what bears on them.
func (r report) ingredients(a *levigate.Assessment) {
	fmt.Fprintln(r, r.ink.bold(a.Formula.Code+" · "+a.Formula.Name)+" · ingredient list, draft")
	markets, others := a.Formula.ListMarkets()
	for _, m := range markets {
		list := a.Ingredients.Of(m)
		r.head(program.MarketName(m))
		fmt.Fprint(r, render.Prose("Ingredients: "+list.Line(), width, "", ""))
		t := work.Table{Head: []string{"", "name", "%", "between", "lines", "order"}}
		for i := range list {
			value, between := ranged(list[i].Percent, 3)
			t.Rows = append(t.Rows, []string{fmt.Sprint(i + 1), nameOrOpen(&list[i]), value, between, lines(list[i].From), orderOf(&list[i])})
		}
		fmt.Fprint(r, "\n"+render.Table(&t, width, "  "))
	}
	if len(others) > 0 {
		fmt.Fprint(r, "\n"+render.Prose("No list for "+strings.Join(others, ", ")+": only the rules of "+
			strings.Join(levigate.Markets, ", ")+" are on file.", width, "", ""))
	}
	if found := program.ListFindings(a); len(found) > 0 {
		about := *a
		about.Findings = found
		r.findings(&about)
	}
}

func nameOrOpen(i *levigate.Ingredient) string {
	if i.Name == "" {
		return "name missing: " + strings.Join(i.INCI, ", ")
	}
	return i.Name
}

// orderOf says what is free or doubtful about a place.
func orderOf(i *levigate.Ingredient) string {
	var said []string
	switch {
	case i.Colourant:
		said = append(said, "colourant, last in any order")
	case i.Below1 && i.Market == "us":
		said = append(said, "not above 1 %, any order")
	case i.Below1:
		said = append(said, "below 1 %, any order")
	}
	if i.Tie {
		said = append(said, "tie with the one above")
	}
	if i.Uncertain {
		said = append(said, "not certain")
	}
	return strings.Join(said, "; ")
}
