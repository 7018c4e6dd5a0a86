package papers

import "strings"

// column is one column of a table.
type column struct {
	head   string
	width  float64 // mm; the one with none takes what the others leave
	number bool    // set on its decimal point; smaller rather than broken when too wide
	most   float64 // for numbers: as wide as the widest needs, up to this
	blank  bool    // to be written in by hand: ruled at both sides
}

// cell is what stands in one place: lines of text, each with its style, or a
// box to tick.
type cell struct {
	lines  []styled
	tick   bool
	framed bool // a number that wants a second look
}

type styled struct {
	style
	text string
}

func said(st style, text string) cell { return cell{lines: []styled{{st, text}}} }

// row is one row; it is never broken over two pages unless longer than one.
type row struct {
	cells  []cell
	span   cell    // instead of cells: over the whole width
	least  float64 // height
	under  float64 // thickness of the rule below it; 0 for none
	grey   int     // of that rule
	blanks bool    // its blank columns are ruled
}

// table lays rows under a head that is repeated on every page.
type table struct {
	*sheet
	columns []column
	point   []float64 // where the decimal point stands, from the column's left
	shrink  []float64 // what the numbers of a column are made smaller by
}

const pad = 1.4 // mm, left and right in a cell

// newTable sets the widths for the rows that will be put down.
func newTable(s *sheet, columns []column, rows []row) *table {
	t := &table{s, columns, make([]float64, len(columns)), make([]float64, len(columns))}
	left, open := s.width(), -1
	for c := range t.columns {
		col := &t.columns[c]
		if col.number {
			t.measureNumbers(c, rows)
		}
		if col.width == 0 {
			open = c
		}
		left -= col.width
	}
	if open >= 0 {
		t.columns[open].width = left
	}
	return t
}

// measureNumbers finds how wide a column of numbers must be, and where its
// decimal points stand.
func (t *table) measureNumbers(c int, rows []row) {
	col := &t.columns[c]
	whole, part := 0.0, 0.0
	for _, r := range rows {
		if c >= len(r.cells) {
			continue
		}
		for _, l := range r.cells[c].lines {
			a, b := atPoint(l.text)
			whole, part = max(whole, t.measure(l.style, a)), max(part, t.measure(l.style, b))
		}
	}
	t.shrink[c] = 1
	if need := whole + part + 2*pad; need > col.most {
		t.shrink[c] = (col.most - 2*pad) / (whole + part)
		col.width = col.most
	} else {
		col.width = max(col.width, need)
	}
	t.point[c] = col.width - pad - part*t.shrink[c]
}

// atPoint parts a number at its decimal point; what is no number is all whole.
func atPoint(text string) (whole, part string) {
	if i := strings.IndexByte(text, '.'); i >= 0 {
		return text[:i], text[i:]
	}
	return text, ""
}

// put draws rows that belong together on one page.
func (t *table) put(rows ...row) {
	height := 0.0
	laid := make([]laidRow, len(rows))
	for i, r := range rows {
		laid[i] = t.lay(r)
		height += laid[i].height
	}
	t.room(height)
	for _, l := range laid {
		t.room(l.height)
		for l.height > t.bottom-t.y {
			var first laidRow
			first, l = l.split(t.bottom - t.y)
			t.draw(first)
			t.turn()
		}
		t.draw(l)
	}
}

// laidRow is a row with its texts broken into lines.
type laidRow struct {
	row
	height float64
}

// lay breaks the texts of a row into lines and finds its height.
func (t *table) lay(r row) laidRow {
	out := laidRow{row: r, height: r.least}
	if out.cells = make([]cell, len(r.cells)); len(r.span.lines) > 0 {
		out.span.lines = nil
		for _, l := range r.span.lines {
			for _, text := range t.wrap(l.style, l.text, t.width()) {
				out.span.lines = append(out.span.lines, styled{l.style, text})
			}
		}
		out.height = max(out.height, out.span.height()+2*pad)
	}
	for c, from := range r.cells {
		to := cell{tick: from.tick, framed: from.framed}
		for _, l := range from.lines {
			if t.columns[c].number {
				l.size *= t.shrink[c]
				to.lines = append(to.lines, l)
				continue
			}
			for _, text := range t.wrap(l.style, l.text, t.columns[c].width-2*pad) {
				to.lines = append(to.lines, styled{l.style, text})
			}
		}
		out.cells[c] = to
		out.height = max(out.height, to.height()+2*pad)
	}
	return out
}

func (c cell) height() float64 {
	h := 0.0
	for _, l := range c.lines {
		h += l.line()
	}
	return h
}

// split parts a row longer than a page: as many lines as fit, one at least, and
// the rest.
func (l laidRow) split(room float64) (first, rest laidRow) {
	first, rest = l, l
	first.cells, rest.cells = make([]cell, len(l.cells)), make([]cell, len(l.cells))
	first.under = 0
	rest.least, rest.height = 0, 0
	for c, from := range l.cells {
		first.cells[c], rest.cells[c] = from.split(room - 2*pad)
		rest.height = max(rest.height, rest.cells[c].height()+2*pad)
	}
	first.span, rest.span = l.span.split(room - 2*pad)
	rest.height = max(rest.height, rest.span.height()+2*pad)
	first.height = room
	return first, rest
}

func (c cell) split(room float64) (first, rest cell) {
	n, h := 0, 0.0
	for n < len(c.lines) && (n == 0 || h+c.lines[n].line() <= room) {
		h += c.lines[n].line()
		n++
	}
	first = c
	first.lines, rest.lines = c.lines[:n], c.lines[n:]
	return first, rest
}

// draw puts one row down.
func (t *table) draw(l laidRow) {
	x, y := float64(leftMargin), t.y
	at := y + (l.height-l.span.height())/2
	for _, text := range l.span.lines {
		t.text(x, at, text.style, text.text)
		at += text.line()
	}
	for c, col := range t.columns {
		if col.blank && l.blanks {
			t.pdf.SetDrawColor(rule, rule, rule)
			t.pdf.SetLineWidth(0.2)
			t.pdf.Line(x, y, x, y+l.height)
			t.pdf.Line(x+col.width, y, x+col.width, y+l.height)
		}
		if c < len(l.cells) {
			t.drawCell(l.cells[c], c, x, y, l.height)
		}
		x += col.width
	}
	if t.y += l.height; l.under > 0 {
		t.rule(t.y, l.under, l.grey)
	}
}

func (t *table) drawCell(c cell, col int, x, y, height float64) {
	column := t.columns[col]
	if c.tick {
		t.tick(x+0.4, y+(height-tickSide)/2)
	}
	at := y + (height-c.height())/2
	if c.framed {
		t.pdf.SetDrawColor(ink, ink, ink)
		t.pdf.SetLineWidth(0.35)
		t.pdf.Rect(x+0.3, at-0.9, column.width-0.6, c.height()+1.8, "D")
	}
	for _, l := range c.lines {
		if column.number {
			whole, part := atPoint(l.text)
			t.textRight(x+t.point[col], at, l.style, whole)
			t.text(x+t.point[col], at, l.style, part)
		} else {
			t.text(x+pad, at, l.style, l.text)
		}
		at += l.line()
	}
}

// drawHead writes the heads of the columns.
func (t *table) drawHead() {
	st := style{size: 7.5, grey: true}
	lines, most := make([][]string, len(t.columns)), 1
	for c, col := range t.columns {
		for part := range strings.SplitSeq(col.head, "\n") {
			lines[c] = append(lines[c], t.wrap(st, part, col.width-1)...)
		}
		most = max(most, len(lines[c]))
	}
	x := float64(leftMargin)
	for c, col := range t.columns {
		y := t.y + float64(most-len(lines[c]))*st.line()
		for _, line := range lines[c] {
			if col.number {
				t.textRight(x+col.width-pad, y, st, line)
			} else {
				t.text(x+pad, y, st, line)
			}
			y += st.line()
		}
		x += col.width
	}
	t.y += float64(most)*st.line() + 1.2
	t.rule(t.y, 0.3, ink)
}
