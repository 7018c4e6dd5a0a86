package refdata

import (
	"embed"
	"fmt"
	"io/fs"
	"slices"
	"sort"
	"strconv"
	"strings"

	"levigate"
	"levigate/cite"
)

//go:embed */*.tsv
var files embed.FS

// Table is one embedded table with the card at its head.
type Table struct {
	Name string // folder/name, without an ending
	Card Card
	Head []string
	Rows []Row
	cols map[string]int
}

// Row is one row of a table.
type Row struct {
	Line  int // in the .tsv, from 1
	cells []string
	table *Table
}

// Open reads a table by its name ("isotherms/solutes").
func Open(name string) (*Table, error) { return open(files, name) }

// Names lists every embedded table.
func Names() []string {
	found, err := fs.Glob(files, "*/*.tsv")
	if err != nil {
		panic("refdata: " + err.Error())
	}
	for i := range found {
		found[i] = strings.TrimSuffix(found[i], ".tsv")
	}
	sort.Strings(found)
	return found
}

// folder opens every table of a folder, in the order of their names: a new
// table joins by being there.
func folder(name string) []*Table {
	var out []*Table
	for _, t := range Names() {
		if strings.HasPrefix(t, name+"/") {
			out = append(out, mustOpen(t))
		}
	}
	return out
}

func open(fsys fs.FS, name string) (*Table, error) {
	text, err := fs.ReadFile(fsys, name+".tsv")
	if err != nil {
		return nil, err
	}
	return parseTable(name, string(text))
}

// parseTable reads a card, the lines that start with #, and the rows under it.
func parseTable(name, text string) (*Table, error) {
	lines := strings.Split(strings.TrimRight(text, "\n"), "\n")
	head := 0
	for head < len(lines) && strings.HasPrefix(lines[head], "#") {
		head++
	}
	c, err := parseCard(name+".tsv", lines[:head])
	if err != nil {
		return nil, err
	}
	t := &Table{Name: name, Card: c, cols: map[string]int{}}
	for i, line := range lines {
		if i < head || strings.TrimSpace(line) == "" {
			continue
		}
		cells := strings.Split(line, "\t")
		if t.Head == nil {
			t.Head = cells
			for j, h := range cells {
				if _, dup := t.cols[h]; dup {
					return nil, fmt.Errorf("%s.tsv:%d: column %q stands twice", name, i+1, h)
				}
				t.cols[h] = j
			}
			continue
		}
		if len(cells) != len(t.Head) {
			return nil, fmt.Errorf("%s.tsv:%d: %d cells, the heading has %d", name, i+1, len(cells), len(t.Head))
		}
		t.Rows = append(t.Rows, Row{Line: i + 1, cells: cells, table: t})
	}
	if len(t.Rows) == 0 {
		return nil, fmt.Errorf("%s.tsv: no rows", name)
	}
	return t, nil
}

// allow says which columns the table may have. One it leaves out reads as
// empty, so that a table of oils need not carry the columns of powders; one
// that is not known is a slip that nobody would ever read.
func (t *Table) allow(columns []string) error {
	for _, h := range t.Head {
		if !slices.Contains(columns, h) {
			return fmt.Errorf("%s.tsv: column %q is not known", t.Name, h)
		}
	}
	for _, c := range columns {
		if _, ok := t.cols[c]; !ok {
			t.cols[c] = -1
		}
	}
	return nil
}

// mustOpen is Open for the tables the program cannot run without.
func mustOpen(name string) *Table {
	t, err := Open(name)
	if err != nil {
		panic("refdata: " + err.Error())
	}
	return t
}

// Text is a cell's text; a column the table lacks is a programmer's slip.
func (r Row) Text(column string) string {
	i, ok := r.table.cols[column]
	if !ok {
		panic(fmt.Sprintf("refdata: %s has no column %q", r.table.Name, column))
	}
	if i < 0 {
		return ""
	}
	return strings.TrimSpace(r.cells[i])
}

// At names the row in its table, for messages and workings.
func (r Row) At() string { return fmt.Sprintf("%s.tsv:%d", r.table.Name, r.Line) }

// Number is a cell read as a number; empty is not a number.
func (r Row) Number(column string) (float64, error) {
	v, err := strconv.ParseFloat(r.Text(column), 64)
	if err != nil {
		return 0, fmt.Errorf("%s: column %s: %q is not a number", r.At(), column, r.Text(column))
	}
	return v, nil
}

// Optional is Number, with 0 for an empty cell.
func (r Row) Optional(column string) (float64, error) {
	if r.Text(column) == "" {
		return 0, nil
	}
	return r.Number(column)
}

// Cell is a cell that carries its own mark: "VALUE MARK SOURCE" or "TYPICAL
// LOW HIGH MARK SOURCE", with MARK one of r (read), c (common practice), m
// (from memory) and SOURCE a key of the bibliography. An empty cell is an
// unknown field.
func (r Row) Cell(column string) (levigate.Range, levigate.Provenance, error) {
	if text := r.Text(column); text != "" {
		return r.cell(column, text)
	}
	return levigate.Range{}, levigate.Provenance{}, nil
}

func (r Row) cell(column, text string) (levigate.Range, levigate.Provenance, error) {
	f := strings.Fields(text)
	bad := func(why string) (levigate.Range, levigate.Provenance, error) {
		return levigate.Range{}, levigate.Provenance{}, fmt.Errorf("%s: column %s: %q: %s", r.At(), column, text, why)
	}
	if len(f) != 3 && len(f) != 5 {
		return bad("want VALUE MARK SOURCE or TYPICAL LOW HIGH MARK SOURCE")
	}
	var v [3]float64
	for i := range len(f) - 2 {
		x, err := strconv.ParseFloat(f[i], 64)
		if err != nil {
			return bad(f[i] + " is not a number")
		}
		v[i] = x
	}
	if len(f) == 3 {
		v[1], v[2] = v[0], v[0]
	}
	if !(v[1] <= v[0] && v[0] <= v[2]) {
		return bad("typical must lie between low and high")
	}
	p, err := provenance(f[len(f)-2], f[len(f)-1])
	if err != nil {
		return bad(err.Error())
	}
	return levigate.Range{Typical: v[0], Low: v[1], High: v[2]}, p, nil
}

// letters are the marks as cells write them.
var letters = map[string]cite.Mark{"r": cite.Read, "c": cite.CommonPractice, "m": cite.FromMemory}

// provenance reads a mark's letter and a source key.
func provenance(mark, key string) (levigate.Provenance, error) {
	m, ok := letters[mark]
	if !ok {
		return levigate.Provenance{}, fmt.Errorf("mark %q is not r, c or m", mark)
	}
	key, at, _ := strings.Cut(key, "@")
	if _, ok := cite.Find(key); !ok {
		return levigate.Provenance{}, fmt.Errorf("source %q is not in the bibliography", key)
	}
	return levigate.Provenance{Mark: m, From: cite.Ref{Key: key, At: at}}, nil
}
