package main

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"strconv"
	"strings"

	"levigate"
	"levigate/formulafile"
	"levigate/internal/program"
)

var ingredientColumns = []string{
	"file", "code", "market", "place", "name", "inci", "percent", "low", "high", "below-one", "tie", "uncertain", "colourant", "lines",
}

// ingredientsCSV prints one heading and one row a place. What could not be
// read, or was found about a list, is said on the error output: a spreadsheet
// has no room for it.
func ingredientsCSV(s *session, outcomes []program.Outcome) error {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	w.Write(ingredientColumns)
	for i := range outcomes {
		o := &outcomes[i]
		if o.Assessment == nil {
			fmt.Fprint(s.err, formulafile.Format(o.Problems, o.File))
			continue
		}
		a := o.Assessment
		markets, _ := a.Formula.ListMarkets()
		for _, m := range markets {
			for j, in := range a.Ingredients.Of(m) {
				w.Write(ingredientRow(o.File, a.Formula.Code, j+1, &in))
			}
		}
		for _, f := range program.ListFindings(a) {
			fmt.Fprintf(s.err, "%s: %s: %s\n  help: %s\n", o.File, f.Rule, f.Text, f.Help)
		}
	}
	w.Flush()
	if err := w.Error(); err != nil {
		return &levigate.Error{Code: levigate.Internal, Message: "the list is no CSV: " + err.Error(), Cause: err}
	}
	_, err := s.out.Write(b.Bytes())
	return err
}

func ingredientRow(file, code string, place int, in *levigate.Ingredient) []string {
	return []string{
		cellText(file), cellText(code), in.Market, strconv.Itoa(place), cellText(in.Name), cellText(strings.Join(in.INCI, "; ")),
		cellNumber(in.Percent.Typical), cellNumber(in.Percent.Low), cellNumber(in.Percent.High),
		strconv.FormatBool(in.Below1), strconv.FormatBool(in.Tie), strconv.FormatBool(in.Uncertain), strconv.FormatBool(in.Colourant),
		cellText(strings.ReplaceAll(lines(in.From), ", ", " ")),
	}
}

// cellText keeps a spreadsheet from taking a name for a formula: an apostrophe
// before = + - @ makes it text.
func cellText(s string) string {
	if t := strings.TrimLeft(s, " \t\r\n"); t != "" && strings.ContainsRune("=+-@", rune(t[0])) {
		return "'" + s
	}
	return s
}

// cellNumber writes a share without what adding floating numbers left behind.
func cellNumber(v float64) string {
	return strconv.FormatFloat(math.Round(v*1e9)/1e9, 'f', -1, 64)
}
