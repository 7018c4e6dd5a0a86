package papers

import (
	"fmt"
	"slices"
	"strings"
	"time"
)

// PDF draws the paper.
func (w *Weighing) PDF(size Size) ([]byte, error) { return pdf(w, size, true) }

func (w *Weighing) title() string             { return joined(" · ", w.Title, w.About) }
func (w *Weighing) made() (string, time.Time) { return w.Program, w.Printed }

func (w *Weighing) foot(page, pages int) (left, right string) {
	return w.Foot, fmt.Sprintf("page %d / %d", page, pages)
}

// The type. Grams are what is read at arm's length.
var (
	nameType   = style{size: 9}
	smallType  = style{size: 7.5, grey: true}
	remarkType = style{face: bold, size: 7.5}
	numberType = style{size: 9.5}
	gramsType  = style{face: bold, size: 11}
	sumType    = style{size: 9.5}
	totalType  = style{face: bold, size: 11}
	proseType  = style{size: 9}
)

// Heights of rows, mm: one to write in and one to read.
const (
	writeRow = 9
	readRow  = 5.4
	blankRow = 9
)

func (w *Weighing) draw(s *sheet, lost []rune) {
	s.head = func() { w.drawAgain(s) }
	w.drawTitle(s)
	w.drawBlanks(s)
	w.drawBalances(s)
	w.drawPhases(s)
	w.drawAdvice(s)
	notes := w.Notes
	if said := lostWords(lost); said != "" {
		notes = append(notes[:len(notes):len(notes)], said)
	}
	drawList(s, "Notes", notes)
	drawList(s, "Take care", w.Cautions)
	drawRoom(s, "Deviations and remarks")
}

func (w *Weighing) drawTitle(s *sheet) {
	big := style{face: serif, size: 21}
	for _, line := range s.wrap(big, w.Title, s.width()) {
		s.room(big.line())
		s.text(leftMargin, s.y, big, line)
		s.y += big.line()
	}
	s.y++
	s.prose(style{size: 10.5}, w.About, 0)
	s.y += 0.8
	var facts []string
	for _, f := range w.Facts {
		if f.Text != "" {
			facts = append(facts, f.Name+" "+f.Text)
		}
	}
	s.prose(smallType, strings.Join(facts, " · "), 0)
	s.y += 1.6
	s.rule(s.y, 0.55, ink)
}

// drawBlanks draws the fields to fill in by hand.
func (w *Weighing) drawBlanks(s *sheet) {
	for _, fields := range w.Blanks {
		s.room(blankRow)
		const gap = 6
		each := (s.width() - gap*float64(len(fields)-1)) / float64(len(fields))
		for i, name := range fields {
			x := leftMargin + float64(i)*(each+gap)
			s.text(x, s.y+blankRow-smallType.line()-0.4, smallType, name)
			s.ruleFrom(x, x+each, s.y+blankRow, 0.2, rule)
		}
		s.y += blankRow
	}
	s.y++
}

func (w *Weighing) drawBalances(s *sheet) {
	s.heading(w.Precise, 2*readRow)
	var rows []row
	for _, cells := range w.Balances.Rows {
		r := row{least: readRow, under: 0.15, grey: hair}
		for _, text := range cells {
			r.cells = append(r.cells, said(style{size: 8.5}, text))
		}
		rows = append(rows, r)
	}
	var columns []column
	for c, head := range w.Balances.Head {
		switch c {
		case 0:
			columns = append(columns, column{head: head, width: 7})
		case 1:
			columns = append(columns, column{head: head})
		default:
			columns = append(columns, column{head: head, number: true, width: 19, most: 24})
		}
	}
	t := newTable(s, columns, rows)
	t.drawHead()
	again := s.head
	s.head = func() { again(); t.drawHead() }
	for _, r := range rows {
		t.put(r)
	}
	s.head = again
}

// weighColumns are the columns of everything that is weighed.
func weighColumns() []column {
	return []column{
		{width: 6}, {head: "line", width: 8}, {head: "raw material"}, {head: "%", number: true, width: 12, most: 17},
		{head: "weigh g", number: true, width: 16, most: 32}, {head: "bal.", width: 8},
		{head: "from g\nto g", number: true, width: 13, most: 24},
		{head: "lot", width: 24, blank: true}, {head: "weighed g", width: 21, blank: true}, {head: "by, time", width: 19, blank: true},
	}
}

// stepColumns are those of a pre-mix; what is written stands under the same.
func stepColumns() []column {
	c := weighColumns()
	return []column{c[0], c[2], c[4], c[5], c[7], c[8], c[9]}
}

func stepRow(l *WeighingLine) row {
	r := lineRow(l)
	c := r.cells
	r.cells = []cell{c[0], c[2], c[4], c[5], c[7], c[8], c[9]}
	return r
}

func (w *Weighing) drawPhases(s *sheet) {
	s.heading("To weigh", 3*writeRow)
	var groups [][]row
	var names []string
	for _, p := range w.Phases {
		var rows []row
		for i := range p.Lines {
			rows = append(rows, lineRow(&p.Lines[i]))
		}
		groups, names = append(groups, append(rows, sumRow(&p.Sum, sumType, 6))), append(names, p.Name)
	}
	// The total never stands alone on a page.
	total := sumRow(&w.Total, totalType, 8)
	total.under = 0.55
	if n := len(groups); n > 0 {
		groups[n-1] = append(groups[n-1], total)
	} else {
		groups, names = [][]row{{total}}, []string{""}
	}
	t := newTable(s, weighColumns(), slices.Concat(groups...))
	t.drawHead()
	again := s.head
	whole := func() { again(); t.drawHead() }
	for g, rows := range groups {
		head := phaseRow(names[g])
		s.head = whole
		// Its last line, its sum and the total stay together, and so do its name
		// and its first line.
		end := max(0, len(rows)-2)
		if g == len(groups)-1 {
			end = max(0, len(rows)-3)
		}
		if end == 0 {
			t.put(append([]row{head}, rows...)...)
			continue
		}
		t.put(head, rows[0])
		s.head = func() { whole(); t.put(phaseRow(names[g] + ", continued")) }
		for _, r := range rows[1:end] {
			t.put(r)
		}
		t.put(rows[max(1, end):]...)
	}
	s.head = again
	s.y++
}

// drawAgain says at the top of a further page what it belongs to: pages part.
func (w *Weighing) drawAgain(s *sheet) {
	end := s.size.Width - rightMargin
	const room = 52
	lines := s.wrap(smallType, joined(" · ", w.Title, w.About), s.width()-room-4)
	if len(lines) > 2 {
		lines = append(lines[:1:1], lines[1]+" …")
	}
	for i, line := range lines {
		s.text(leftMargin, s.y+float64(i)*smallType.line(), smallType, line)
	}
	s.text(end-room, s.y, smallType, "batch no.")
	s.ruleFrom(end-room, end, s.y+smallType.line()+0.4, 0.2, rule)
	s.y += 2*smallType.line() + 2.5
}

func phaseRow(name string) row {
	st := style{face: serif, size: 12}
	return row{span: said(st, name), least: 7, under: 0.2, grey: rule}
}

func lineRow(l *WeighingLine) row {
	name := cell{lines: []styled{{nameType, l.Name}}}
	if l.Code != "" && l.Code != l.Name {
		name.lines = append(name.lines, styled{smallType, l.Code})
	}
	if len(l.Remarks) > 0 {
		name.lines = append(name.lines, styled{remarkType, strings.Join(l.Remarks, "; ")})
	}
	grams := said(gramsType, l.Grams)
	grams.framed = l.Framed
	allowed := said(style{size: 8}, l.From)
	if l.To != "" {
		allowed.lines = append(allowed.lines, styled{style{size: 8}, l.To})
	}
	return row{
		cells: []cell{{tick: true}, said(smallType, l.Number), name, said(numberType, l.Percent), grams, said(smallType, l.Balance), allowed, {}, {}, {}},
		least: writeRow, under: 0.2, grey: rule, blanks: true,
	}
}

func sumRow(l *WeighingLine, st style, height float64) row {
	return row{
		cells: []cell{{}, {}, said(st, l.Name), said(style{face: st.face, size: numberType.size}, l.Percent), said(st, l.Grams), {}, {}, {}, {}, {}},
		least: height, under: 0.3, grey: ink,
	}
}

// drawAdvice says what to do about lines that need it, with rows to weigh for a
// pre-mix.
func (w *Weighing) drawAdvice(s *sheet) {
	if len(w.Advice) == 0 {
		return
	}
	s.heading("Lines with a note", 24)
	var all []row
	for _, a := range w.Advice {
		for i := range a.Steps {
			all = append(all, stepRow(&a.Steps[i]))
		}
	}
	t := newTable(s, stepColumns(), all)
	again := s.head
	for _, a := range w.Advice {
		title := style{face: bold, size: 9.5}
		height := float64(len(s.wrap(title, a.Title, s.width())))*title.line() + float64(len(s.wrap(proseType, a.Text, s.width())))*proseType.line()
		var rows []row
		for i := range a.Steps {
			rows = append(rows, stepRow(&a.Steps[i]))
			height += t.lay(rows[i]).height
		}
		s.room(height + 7) // the head of the steps with it
		s.prose(title, a.Title, 0)
		s.prose(proseType, a.Text, 0)
		if s.y += 0.8; len(rows) > 0 {
			t.drawHead()
			s.head = func() { again(); t.drawHead() }
			t.put(rows...)
			s.head = again
		}
		s.y += 2.5
	}
}

// drawList writes short texts under a heading, each as a paragraph.
func drawList(s *sheet, head string, texts []string) {
	if len(texts) == 0 {
		return
	}
	s.heading(head, 2*proseType.line())
	for _, text := range texts {
		s.prose(proseType, text, 0)
		s.y += 0.9
	}
}

// drawRoom leaves ruled lines to write on.
func drawRoom(s *sheet, head string) {
	const lines, each = 3, 8
	s.heading(head, lines*each)
	for range lines {
		s.y += each
		s.rule(s.y, 0.2, rule)
	}
}
