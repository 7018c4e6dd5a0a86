package main

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"levigate"
	"levigate/internal/program"
	"levigate/quantity"
)

var costingColumns = []string{
	"phase", "line", "code", "raw material", "percent", "grams in a kilogram", "grams in a unit", "priced", "price of", "paid", "freight", "other", "currency",
	"pack", "landed a kilogram", "date", "supplier", "cost in a kilogram", "share percent", "notes",
}

// printCostingCSV writes one row a line, without a total: who adds the column up
// gets it, or, where a price is missing, less. That is said on the error output.
func printCostingCSV(out, errs io.Writer, c *levigate.Costing) error {
	w := csv.NewWriter(out)
	rows := [][]string{costingColumns}
	for i := range c.Lines {
		l := &c.Lines[i]
		row := []string{cellText(l.Phase), strconv.Itoa(l.Line + 1), cellText(l.Code), cellText(l.Name), l.Percent.String(), l.Grams.String(), filled(l.InUnit),
			"no", "", "", "", "", "", "", "", "", "", "", "", cellText(strings.Join(l.Notes, "; "))}
		if p := l.Price; p != nil {
			freight := ""
			if p.FreightStated {
				freight = p.Freight.String()
			}
			copy(row[7:], []string{"yes", cellText(p.Material), p.Paid.String(), freight, p.Other.String(), p.Currency, cellText(p.Pack), l.Landed.String(),
				program.DayWords(p.Date), cellText(p.Supplier), l.Cost.String(), shareOf(l.Share)})
		}
		rows = append(rows, row)
	}
	if err := w.WriteAll(rows); err != nil {
		return err
	}
	if no := program.NoTotal(c); no != "" {
		fmt.Fprintln(errs, "levigate:", no)
	}
	return nil
}

func shareOf(d *quantity.Decimal) string {
	if d == nil {
		return ""
	}
	return d.Fixed(2)
}
