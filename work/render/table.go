package render

import (
	"slices"
	"strings"
	"unicode"

	"levigate/work"
)

// Table writes a table aligned for a terminal: numbers right, words left.
// Where it is wider than width, its widest column of words wraps.
func Table(t *work.Table, width int, indent string) string {
	rows := append([][]string{t.Head}, t.Rows...)
	if len(t.Foot) > 0 {
		rows = append(rows, t.Foot)
	}
	columns := 0
	for _, r := range rows {
		columns = max(columns, len(r))
	}
	numeric := make([]bool, columns)
	for c := range numeric {
		numeric[c] = isNumeric(t, c)
	}
	widths := fit(rows, numeric, width-wide(indent))
	var b strings.Builder
	for i, r := range rows {
		if len(t.Foot) > 0 && i == len(rows)-1 {
			b.WriteString(indent + strings.Repeat("─", sum(widths)) + "\n")
		}
		b.WriteString(row(r, widths, numeric, indent))
	}
	return b.String()
}

const gap = "  "

// row writes one row, on as many lines as its longest cell needs.
func row(cells []string, widths []int, numeric []bool, indent string) string {
	lines := make([][]string, len(widths))
	height := 1
	for c := range widths {
		if c < len(cells) {
			lines[c] = wrap(cells[c], widths[c])
		}
		height = max(height, len(lines[c]))
	}
	var b strings.Builder
	for h := range height {
		line := indent
		for c, w := range widths {
			cell := ""
			if h < len(lines[c]) {
				cell = lines[c][h]
			}
			if c > 0 {
				line += gap
			}
			if numeric[c] {
				line += padLeft(cell, w)
			} else {
				line += pad(cell, w)
			}
		}
		b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	return b.String()
}

// fit finds the columns' widths: as wide as their cells, and the widest column
// of words narrower until the row fits. Fourteen columns is the least in which
// names still read.
func fit(rows [][]string, numeric []bool, width int) []int {
	const least = 14
	widths := make([]int, len(numeric))
	for _, r := range rows {
		for c, cell := range r {
			widths[c] = max(widths[c], wide(cell))
		}
	}
	for sum(widths) > width {
		widest := -1
		for c, w := range widths {
			if !numeric[c] && w > least && (widest < 0 || w > widths[widest]) {
				widest = c
			}
		}
		if widest < 0 {
			break
		}
		widths[widest]--
	}
	return widths
}

func sum(widths []int) int {
	total := len(gap) * (len(widths) - 1)
	for _, w := range widths {
		total += w
	}
	return total
}

// isNumeric reports whether a column is one of numbers: nearly all its filled
// cells start like one ("no data" may stand among them).
func isNumeric(t *work.Table, column int) bool {
	filled, numbers := 0, 0
	for _, r := range t.Rows {
		if column >= len(r) || r[column] == "" || r[column] == None {
			continue
		}
		first := []rune(r[column])[0]
		filled++
		if unicode.IsDigit(first) || slices.Contains([]rune("+-−±<"), first) {
			numbers++
		}
	}
	return filled > 0 && 3*numbers >= 2*filled
}
