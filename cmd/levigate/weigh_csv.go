package main

import (
	"encoding/csv"
	"io"
	"strconv"
	"strings"

	"levigate"
	"levigate/quantity"
)

var weighingColumns = []string{
	"phase", "line", "code", "raw material", "percent", "grams", "from g", "to g", "balance", "minimum weight g", "within percent", "can",
	"portions", "portion g", "smallest batch g", "premix in", "premix line g", "premix diluent g", "premix take g", "takes up rounding", "notes",
}

// printWeighingCSV writes one row a line, without a total: who adds the column
// up gets the batch.
func printWeighingCSV(out io.Writer, l *levigate.WeighingList) error {
	w := csv.NewWriter(out)
	rows := [][]string{weighingColumns}
	for i := range l.Lines {
		x := &l.Lines[i]
		row := []string{
			cellText(x.Phase), strconv.Itoa(x.Line + 1), cellText(x.Code), cellText(x.Name), x.Percent.String(), x.Grams.String(), filled(x.From), filled(x.To),
			cellText(l.Balances[x.Balance].Name), x.Minimum.String(), quantity.Significant(100*x.Uncertainty, 2), string(x.Can),
			strconv.Itoa(x.Portions), x.Portion.String(), filled(x.SmallestBatch), "", "", "", "", "", cellText(strings.Join(x.Notes, "; ")),
		}
		if p := x.Premix; p != nil {
			copy(row[15:], []string{cellText(p.Name), p.Active.String(), p.Diluent.String(), p.Take.String()})
		}
		if x.Absorbs {
			row[19] = "yes"
		}
		rows = append(rows, row)
	}
	return w.WriteAll(rows)
}

func filled(d quantity.Decimal) string {
	if d.IsZero() {
		return ""
	}
	return d.String()
}
