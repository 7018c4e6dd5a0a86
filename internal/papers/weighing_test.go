package papers

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
	"unicode/utf16"

	"levigate"
	"levigate/quantity"
	"levigate/work"
)

var dec = quantity.MustDecimal

var day = time.Date(2026, 11, 25, 14, 2, 9, 0, time.UTC)

// listOf is a weighing list of so many lines, one gram each, in phases of seven.
func listOf(names ...string) *levigate.WeighingList {
	l := &levigate.WeighingList{
		Formula: &levigate.Formula{Code: "T-60", Name: "Sixty"}, Batch: dec(fmt.Sprint(len(names))), Tolerance: dec("2"),
		Balances: []levigate.Balance{{Name: "Bench", Interval: dec("0.01"), Capacity: dec("2000"), Repeatability: dec("0.01")}},
		Minima:   []quantity.Decimal{dec("1")},
	}
	for i, name := range names {
		phase := string(rune('A' + i/7))
		l.Lines = append(l.Lines, levigate.Weighing{
			Line: i, Phase: phase, Name: name, Code: fmt.Sprintf("C-%02d", i+1), Percent: dec("1.5"), Grams: dec("1"), Shows: dec("1"),
			From: dec("0.98"), To: dec("1.02"), Can: levigate.Directly, Portions: 1,
		})
		if n := len(l.Phases); n == 0 || l.Phases[n-1].Phase != phase {
			l.Phases = append(l.Phases, levigate.PhaseGrams{Phase: phase})
		}
		p := &l.Phases[len(l.Phases)-1]
		p.Grams = p.Grams.Add(dec("1"))
	}
	return l
}

func paperOf(l *levigate.WeighingList) *Weighing {
	return NewWeighing(l, Origin{File: "t.formula.yaml", Product: "bath", Program: "levigate 0", Tables: "abc", Printed: day, Cautions: []string{"Caustics burn: gloves and goggles."}})
}

func drawn(t *testing.T, w *Weighing, size Size) []byte {
	t.Helper()
	b, err := pdf(w, size, false)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// word is one piece of text on a page, as the reader of the tests finds it.
type word struct {
	x, y, size float64
	text       string
}

var shows = regexp.MustCompile(`BT /F\S+ ([\d.]+) Tf ET|BT (-?[\d.]+) (-?[\d.]+) Td \(`)

// pagesOf reads the text out of an uncompressed PDF without any help of what
// wrote it: each page's texts with their places, in points from the lower left.
func pagesOf(t *testing.T, file []byte) [][]word {
	t.Helper()
	var pages [][]word
	for _, content := range bytes.Split(file, []byte("stream\n")) {
		if !bytes.Contains(content, []byte(" Td (")) {
			continue
		}
		var page []word
		size := 0.0
		for at := 0; ; {
			m := shows.FindSubmatchIndex(content[at:])
			if m == nil {
				break
			}
			group := func(n int) string { return string(content[at+m[2*n] : at+m[2*n+1]]) }
			if m[2] >= 0 {
				size, _ = strconv.ParseFloat(group(1), 64)
				at += m[1]
				continue
			}
			x, _ := strconv.ParseFloat(group(2), 64)
			y, _ := strconv.ParseFloat(group(3), 64)
			text, length := literal(content[at+m[1]:])
			page = append(page, word{x, y, size, text})
			at += m[1] + length
		}
		pages = append(pages, page)
	}
	return pages
}

// literal reads a string of a PDF in UTF-16 up to its closing bracket.
func literal(b []byte) (string, int) {
	var raw []byte
	i := 0
	for ; i < len(b) && b[i] != ')'; i++ {
		if b[i] == '\\' {
			if i++; b[i] == 'r' {
				raw = append(raw, '\r')
				continue
			}
		}
		raw = append(raw, b[i])
	}
	var units []uint16
	for j := 0; j+1 < len(raw); j += 2 {
		units = append(units, uint16(raw[j])<<8|uint16(raw[j+1]))
	}
	return string(utf16.Decode(units)), i
}

// textOf is all that is said on the pages, one line of type after another.
func textOf(pages [][]word) string {
	var b strings.Builder
	for _, p := range pages {
		for _, w := range p {
			b.WriteString(strings.ReplaceAll(w.text, "\u00a0", " ") + "\n")
		}
	}
	return b.String()
}

// flat is a text without its line breaks.
func flat(text string) string { return strings.Join(strings.Fields(text), " ") }

func names(n int) []string {
	out := make([]string, n)
	for i := range out {
		out[i] = fmt.Sprintf("Raw material number %d, of some length, refined", i+1)
	}
	return out
}

func TestSameContentSameBytes(t *testing.T) {
	for _, size := range []Size{A4, Letter} {
		w := paperOf(listOf(names(60)...))
		one, err := w.PDF(size)
		if err != nil {
			t.Fatal(err)
		}
		// Another hour of the same day, another zone.
		w.Printed = time.Date(2026, 11, 25, 23, 1, 0, 0, time.FixedZone("east", 3*3600))
		two, err := w.PDF(size)
		if err != nil || !bytes.Equal(one, two) {
			t.Errorf("%v: two runs differ: %v", size, err)
		}
		w.Printed = day.AddDate(0, 0, 1)
		if three, _ := w.PDF(size); bytes.Equal(one, three) {
			t.Error("another day gives the same bytes: the test sees nothing")
		}
	}
}

// Sixty lines go over pages: each has the heads of the columns and its number,
// every name and code stands whole on one page, nothing runs off the paper, and
// no two texts overlap.
func TestSixtyLines(t *testing.T) {
	for name, size := range map[string]Size{"A4": A4, "Letter": Letter} {
		w := paperOf(listOf(names(60)...))
		pages := pagesOf(t, drawn(t, w, size))
		if len(pages) < 3 {
			t.Fatalf("%s: %d pages", name, len(pages))
		}
		for i, p := range pages {
			said := textOf([][]word{p})
			if !strings.Contains(said, fmt.Sprintf("page %d / %d", i+1, len(pages))) {
				t.Errorf("%s: page %d has no number: %s", name, i+1, said)
			}
			if i > 0 && !strings.Contains(said, "batch no.") {
				t.Errorf("%s: page %d does not say what it belongs to", name, i+1)
			}
			if strings.Contains(said, "C-") && !strings.Contains(said, "raw material") {
				t.Errorf("%s: page %d has lines without a head", name, i+1)
			}
		}
		for i := range 60 {
			found := 0
			for _, p := range pages {
				if s := flat(textOf([][]word{p})); strings.Contains(s, w.Phases[i/7].Lines[i%7].Name+" "+fmt.Sprintf("C-%02d", i+1)) {
					found++
				}
			}
			if found != 1 {
				t.Errorf("%s: line %d stands on %d pages", name, i+1, found)
			}
		}
		for i, fault := range faults(t, pages, size) {
			if i < 5 {
				t.Errorf("%s: %s", name, fault)
			}
		}
	}
}

// faults looks for text off the page or over other text, measured with the
// fonts themselves.
func faults(t *testing.T, pages [][]word, size Size) []string {
	t.Helper()
	s := newSheet(paperOf(listOf("x")), size, 1, false)
	const mm = 72 / 25.4
	var out []string
	for _, p := range pages {
		type box struct{ x1, x2, y1, y2 float64 }
		var boxes []box
		for _, w := range p {
			// The widest face: no fault is missed.
			width := s.measure(style{face: bold, size: w.size}, w.text) * mm
			b := box{w.x, w.x + width*0.9, w.y, w.y + 0.6*w.size}
			if b.x1 < 0 || w.y < 0 || b.x2 > size.Width*mm || b.y2 > size.Height*mm {
				out = append(out, fmt.Sprintf("%q runs off the page", w.text))
			}
			for i, o := range boxes {
				if b.x1 < o.x2-0.1 && o.x1 < b.x2-0.1 && b.y1 < o.y2-0.1 && o.y1 < b.y2-0.1 && strings.TrimSpace(w.text) != "" {
					out = append(out, fmt.Sprintf("%q lies over %q", w.text, p[i].text))
				}
			}
			boxes = append(boxes, b)
		}
	}
	return out
}

// The checker is shown what it must catch.
func TestFaultsAreCaught(t *testing.T) {
	over := [][]word{{{x: 50, y: 100, size: 10, text: "one"}, {x: 55, y: 102, size: 10, text: "two"}}}
	if len(faults(t, over, A4)) == 0 {
		t.Error("text over text passed")
	}
	off := [][]word{{{x: 580, y: 100, size: 10, text: "far too far to the right"}}}
	if len(faults(t, off, A4)) == 0 {
		t.Error("text off the page passed")
	}
}

// Names in other scripts are shown; what the type lacks is marked, and said.
func TestCharacters(t *testing.T) {
	w := paperOf(listOf("Έλαιο ελιάς", "Масло ши", "Öl 5 °C, 3 µm ≤ x", "Rose 🌹 water", "水", "שמן", "Tab\there", "soft\u00adhyphen\u200b", "bad\xffbytes"))
	w.Title = "Крем 水"
	said := textOf(pagesOf(t, drawn(t, w, A4)))
	for _, want := range []string{"Έλαιο ελιάς", "Масло ши", "Öl 5 °C, 3 µm ≤ x", "Rose � water", "���", "Tab here", "softhyphen", "bad�bytes", "Крем �", "U+1F339", "U+6C34", "U+05E9"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not on the paper", want)
		}
	}
	if plainSaid := textOf(pagesOf(t, drawn(t, paperOf(listOf("Öl")), A4))); strings.Contains(plainSaid, "stands for a character") {
		t.Error("a note about characters stands on a paper that shows them all")
	}
}

func TestGlyphsHeld(t *testing.T) {
	for f := range fonts {
		holds := fonts[f].holds()
		if len(holds) < 2000 {
			t.Errorf("face %d holds %d characters", f, len(holds))
		}
		for _, r := range "Aé€µ°≤−–·Жψ…±�" {
			if !holds[r] {
				t.Errorf("face %d lacks %q", f, r)
			}
		}
		for _, r := range "水🌹" {
			if holds[r] {
				t.Errorf("face %d claims %q", f, r)
			}
		}
	}
	if n := len(held([]byte("no font at all, but long enough to look at"))); n != 0 {
		t.Errorf("%d characters in no font", n)
	}
}

// Nothing to weigh, one phase without a name, a name longer than a page, a
// number wider than its column, no balances' worth of words.
func TestOddLists(t *testing.T) {
	none := listOf()
	empty := listOf("Water")
	empty.Lines[0].Phase, empty.Phases[0].Phase = "", ""
	empty.Lines[0].Can, empty.Lines[0].Grams, empty.Lines[0].Shows = levigate.Nothing, quantity.Decimal{}, quantity.Decimal{}
	empty.Formula.Name, empty.Formula.Code = "", ""
	long := listOf(strings.Repeat("longer than a page ", 400), strings.Repeat("W", 3000))
	long.Lines[0].Phase = strings.Repeat("phase", 60)
	wide := listOf("Oil", "Wax")
	wide.Lines[0].Grams, wide.Lines[0].Shows = dec("99999999999.123456"), dec("99999999999.123456")
	wide.Lines[0].From, wide.Lines[0].To = dec("98999999999.123456"), dec("99999999999.123456")
	for name, l := range map[string]*levigate.WeighingList{"none": none, "empty": empty, "long": long, "wide": wide} {
		for _, size := range []Size{A4, Letter} {
			w := paperOf(l)
			pages := pagesOf(t, drawn(t, w, size))
			for i, fault := range faults(t, pages, size) {
				if i < 3 {
					t.Errorf("%s: %.120s", name, fault)
				}
			}
			switch said := flat(textOf(pages)); name {
			case "long":
				if n := strings.Count(said, "longer"); n != 400 || strings.Count(said, "W") < 3000 {
					t.Errorf("of 400 times a name %d are left", n)
				}
			case "empty":
				if !strings.Contains(said, "No phase named") || !strings.Contains(said, "nothing to weigh") {
					t.Errorf("%s", said)
				}
			case "wide":
				if whole := strings.ReplaceAll(said, " ", ""); !strings.Contains(whole, "99999999999.123456") {
					t.Errorf("the number is not whole: %s", said)
				}
			}
		}
	}
}

func TestSizeNamed(t *testing.T) {
	for _, name := range []string{"a4", "A4", "letter"} {
		if _, ok := SizeNamed(name); !ok {
			t.Error(name)
		}
	}
	if _, ok := SizeNamed("foolscap"); ok {
		t.Error("foolscap is a size")
	}
}

// Another program's reading of the same file, where that program is at hand.
func TestAsAnotherReaderSeesIt(t *testing.T) {
	tool, err := exec.LookPath("pdftotext")
	if err != nil {
		t.Skip("pdftotext is not at hand")
	}
	b, err := paperOf(listOf("Масло ши", "Kaolin")).PDF(A4)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "w.pdf")
	if err := os.WriteFile(path, b, 0o644); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(tool, "-layout", path, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"Масло ши", "Kaolin", "0.98", "1.02", "page 1 / 1", "Caustics burn"} {
		if !strings.Contains(string(out), want) {
			t.Errorf("%q is not read", want)
		}
	}
}

// No content, however odd, panics or keeps the program for ever.
func FuzzWeighing(f *testing.F) {
	f.Add("Walnut", "HP-01", "Kaolin, fine", "12.50", uint8(3))
	f.Add("", "", "", "", uint8(0))
	f.Add("\x00\xff🌹", "{nb}", "((\\)", "1.2.3", uint8(24))
	f.Add("έ", strings.Repeat("W", 500), "a\u00a0b", "-", uint8(1))
	f.Fuzz(func(t *testing.T, title, code, name, number string, lines uint8) {
		if len(title)+len(code)+len(name)+len(number) > 600 || lines > 24 {
			t.Skip()
		}
		line := WeighingLine{number, name, code, number, number, number, number, number, len(name)%2 == 0, []string{name, title}}
		w := &Weighing{
			Title: title, About: code, Precise: name, Foot: title + code, Program: code, Total: line,
			Facts: []Fact{{name, number}}, Blanks: [][]string{{name, code}}, Notes: []string{title}, Cautions: []string{name},
			Balances: work.Table{Head: []string{"", name, number}, Rows: [][]string{{number, name, number}}},
			Phases:   []WeighingPhase{{name, slices.Repeat([]WeighingLine{line}, int(lines)), line}},
			Advice:   []WeighingAdvice{{title, name, []WeighingLine{line}}},
		}
		if _, err := w.PDF(A4); err != nil {
			t.Fatal(err)
		}
	})
}

func BenchmarkWeighingPDF(b *testing.B) {
	w := paperOf(listOf(names(20)...))
	for b.Loop() {
		if _, err := w.PDF(A4); err != nil {
			b.Fatal(err)
		}
	}
}
