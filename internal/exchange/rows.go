package exchange

import (
	"encoding/csv"
	"errors"
	"io"
	"strings"
	"unicode/utf8"

	"levigate"
)

// row is one line of the list that says something.
type row struct {
	cells  []string
	places []levigate.Place
}

// at is where a cell stands; past the last one, where the line begins.
func (w row) at(i int) levigate.Place {
	if i < len(w.places) {
		return w.places[i]
	}
	return w.places[0]
}

// cell is what stands in a column; nothing past the last.
func (w row) cell(i int) string {
	if i < len(w.cells) {
		return strings.TrimSpace(w.cells[i])
	}
	return ""
}

// rows cuts the text into lines and cells. Blank lines, lines of separators alone
// and those that begin with # are passed over.
func (r *reader) rows(text string) []row {
	lines := strings.Split(text, "\n")
	c := csv.NewReader(strings.NewReader(text))
	c.Comma = separator(lines)
	c.Comment = '#'
	c.FieldsPerRecord = -1
	c.TrimLeadingSpace = c.Comma != '\t'
	var out []row
	for !r.full() {
		cells, err := c.Read()
		if err == io.EOF {
			break
		}
		if e, ok := errors.AsType[*csv.ParseError](err); ok {
			r.report(levigate.Place{Line: e.StartLine}, `write quotation marks round a whole cell only, and double one inside: "the ""white"" one"`,
				"a quotation mark on this line is not where a cell begins or ends")
			continue
		}
		if err != nil {
			r.report(levigate.Place{}, "save the list again", "the list can't be read: %v", err)
			break
		}
		if strings.TrimSpace(strings.Join(cells, "")) == "" {
			continue
		}
		if len(cells) > maxCells {
			line, _ := c.FieldPos(0)
			r.report(levigate.Place{Line: line}, "a price takes nine at most; is this the right file?", "the line has %d cells, more than %d", len(cells), maxCells)
			continue
		}
		w := row{cells: cells}
		for i := range cells {
			line, column := c.FieldPos(i)
			w.places = append(w.places, levigate.Place{Line: line, Column: characters(lines[line-1], column-1) + 1})
		}
		out = append(out, w)
	}
	return out
}

// characters counts those in the first n bytes of a line.
func characters(line string, n int) int { return utf8.RuneCountInString(line[:min(n, len(line))]) }

// separator is the one of comma, semicolon and tab that makes most known columns
// of the heading; where none makes any, the one that cuts it most often.
func separator(lines []string) rune {
	best, most := ',', 0
	for _, l := range lines {
		if strings.TrimSpace(l) == "" || strings.HasPrefix(l, "#") {
			continue
		}
		for _, s := range ",;\t" {
			words := strings.Split(l, string(s))
			score := len(words)
			for _, w := range words {
				if known(strings.Trim(strings.TrimSpace(w), `"`)) != nil {
					score += 1000
				}
			}
			if score > most {
				best, most = s, score
			}
		}
		break
	}
	return best
}
