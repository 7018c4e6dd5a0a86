package papers

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"levigate/work/render"
)

// sheet is a paper being drawn, from the top down.
type sheet struct {
	pdf    *fpdf.Fpdf
	size   Size
	y      float64 // where the next thing goes
	bottom float64 // where the foot begins
	head   func()  // drawn at the top of every page after the first
	lost   []rune  // characters no face holds
}

// paper is what the kit needs to know of any paper.
type paper interface {
	title() string
	made() (program string, printed time.Time)
	foot(page, pages int) (left, right string)
	// draw puts everything down. Lost are the characters that could not be shown
	// the last time round.
	draw(s *sheet, lost []rune)
}

// pdf draws a paper until it knows how many pages it has and what it could not
// show, for both stand on it. Twice is enough for nearly all.
func pdf(p paper, size Size, compress bool) ([]byte, error) {
	pages, lost := 0, []rune(nil)
	for round := 1; ; round++ {
		s := newSheet(p, size, pages, compress)
		p.draw(s, lost)
		if s.pdf.Err() || round == mostRounds || s.pdf.PageNo() == pages && slices.Equal(s.lost, lost) {
			var b bytes.Buffer
			err := s.pdf.Output(&b)
			return b.Bytes(), err
		}
		pages, lost = s.pdf.PageNo(), s.lost
	}
}

// mostRounds ends what can't come to rest.
const mostRounds = 5

func newSheet(p paper, size Size, pages int, compress bool) *sheet {
	doc := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: size.Width, Ht: size.Height}})
	s := &sheet{pdf: doc, size: size, bottom: size.Height - footMargin}
	for _, f := range fonts {
		doc.AddUTF8FontFromBytes(f.family, f.style, f.file)
	}
	program, printed := p.made()
	title, _ := plain.shown(p.title())
	program, _ = plain.shown(program)
	doc.SetTitle(title, true)
	doc.SetCreator(program, true)
	doc.SetProducer(program, true)
	doc.SetLang("en")
	// The same content gives the same bytes, whenever and wherever it is drawn.
	doc.SetCatalogSort(true)
	day := time.Date(printed.Year(), printed.Month(), printed.Day(), 0, 0, 0, 0, time.UTC)
	doc.SetCreationDate(day)
	doc.SetModificationDate(day)
	doc.SetCompression(compress)
	doc.SetMargins(leftMargin, topMargin, rightMargin)
	doc.SetAutoPageBreak(false, 0)
	doc.SetFooterFunc(func() { s.drawFoot(p.foot(doc.PageNo(), pages)) })
	doc.AddPage()
	s.y = topMargin
	return s
}

// width is what stands between the margins.
func (s *sheet) width() float64 { return s.size.Width - leftMargin - rightMargin }

// turn begins a page.
func (s *sheet) turn() {
	s.pdf.AddPage()
	if s.y = topMargin; s.head != nil {
		s.head()
	}
}

// room turns the page when less than height is left on it.
func (s *sheet) room(height float64) {
	if s.y+height > s.bottom {
		s.turn()
	}
}

// style is how a text looks.
type style struct {
	face face
	size float64 // points
	grey bool    // secondary
}

// line is the height of one line of it, mm.
func (st style) line() float64 { return st.size * 25.4 / 72 * 1.22 }

// use puts a style in force and gives the text as it will be drawn. The serif
// holds fewer scripts than the sans: a text it lacks is set in the other whole.
func (s *sheet) use(st style, text string) string {
	out, lost := st.face.shown(text)
	if len(lost) > 0 && st.face != plain {
		if o, l := plain.shown(text); len(l) < len(lost) {
			out, lost, st.face = o, l, plain
		}
	}
	for _, r := range lost {
		if !slices.Contains(s.lost, r) {
			s.lost = append(s.lost, r)
		}
	}
	s.pdf.SetFont(fonts[st.face].family, fonts[st.face].style, st.size)
	ink := 0
	if st.grey {
		ink = 70
	}
	s.pdf.SetTextColor(ink, ink, ink)
	return out
}

// measure is how wide a text is.
func (s *sheet) measure(st style, text string) float64 {
	return s.pdf.GetStringWidth(s.use(st, text))
}

// text writes one line with its top left at x, y.
func (s *sheet) text(x, y float64, st style, text string) {
	if out := s.use(st, text); strings.TrimSpace(out) != "" {
		s.pdf.Text(x, y+0.78*st.line(), out)
	}
}

// textRight writes one line that ends at x.
func (s *sheet) textRight(x, y float64, st style, text string) {
	s.text(x-s.measure(st, text), y, st, text)
}

// wrap breaks a text into lines of a width: at spaces, and inside a word only
// where the word alone is too long.
func (s *sheet) wrap(st style, text string, width float64) []string {
	text = s.use(st, strings.ReplaceAll(render.Tie(text), " µm", "\u00a0µm"))
	fits := func(t string) bool { return s.pdf.GetStringWidth(t) <= width }
	var out []string
	line := ""
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' }) {
		if line != "" && fits(line+" "+word) {
			line += " " + word
			continue
		}
		if line != "" {
			out = append(out, line)
		}
		for line = word; !fits(line); {
			runes := []rune(line)
			n := 1
			for n < len(runes)-1 && fits(string(runes[:n+1])) {
				n++
			}
			if n == len(runes) {
				break
			}
			out = append(out, string(runes[:n]))
			line = string(runes[n:])
		}
	}
	return append(out, line)
}

// prose writes a text over as many lines as it needs.
func (s *sheet) prose(st style, text string, indent float64) {
	for _, line := range s.wrap(st, text, s.width()-indent) {
		s.room(st.line())
		s.text(leftMargin+indent, s.y, st, line)
		s.y += st.line()
	}
}

// heading writes a heading that stays with what follows it.
func (s *sheet) heading(text string, with float64) {
	st := style{face: serif, size: 12.5}
	lines := s.wrap(st, text, s.width())
	s.y += 3
	s.room(float64(len(lines))*st.line() + 1 + with)
	for _, line := range lines {
		s.room(st.line())
		s.text(leftMargin, s.y, st, line)
		s.y += st.line()
	}
	s.y++
}

// rule draws a level line from margin to margin.
func (s *sheet) rule(y, thick float64, grey int) {
	s.ruleFrom(leftMargin, s.size.Width-rightMargin, y, thick, grey)
}

func (s *sheet) ruleFrom(x1, x2, y, thick float64, grey int) {
	s.pdf.SetDrawColor(grey, grey, grey)
	s.pdf.SetLineWidth(thick)
	s.pdf.Line(x1, y, x2, y)
}

// Greys of rules: one that carries meaning, one that only guides the eye.
const (
	ink  = 0
	rule = 120
	hair = 190
)

// tick draws an empty box to tick.
func (s *sheet) tick(x, y float64) {
	s.pdf.SetDrawColor(ink, ink, ink)
	s.pdf.SetLineWidth(0.3)
	s.pdf.Rect(x, y, tickSide, tickSide, "D")
}

const tickSide = 3.7

// drawFoot writes the foot. What does not fit two lines is on the first page in
// full.
func (s *sheet) drawFoot(left, right string) {
	st := style{size: 7.5, grey: true}
	y := s.bottom + 4
	s.rule(y, 0.2, rule)
	end := s.size.Width - rightMargin
	s.textRight(end, y+1.5, st, right)
	lines := s.wrap(st, left, s.width()-s.measure(st, right)-6)
	if len(lines) > 2 {
		lines = append(lines[:1:1], lines[1]+" …")
	}
	for i, line := range lines {
		s.text(leftMargin, y+1.5+float64(i)*st.line(), st, line)
	}
}

// lostWords says which characters a paper could not show.
func lostWords(lost []rune) string {
	const most = 12
	if len(lost) == 0 {
		return ""
	}
	var names []string
	for i, r := range lost {
		if i == most {
			names = append(names, fmt.Sprintf("%d more", len(lost)-most))
			break
		}
		names = append(names, fmt.Sprintf("%U", r))
	}
	return string(stranger) + " stands for a character that the type of this paper does not hold: " + strings.Join(names, ", ") + "."
}
