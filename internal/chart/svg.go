package chart

import (
	"fmt"
	"html"
	"strings"
)

// svg collects an image. Numbers have one decimal: a tenth of a pixel is more
// than an eye sees, and the bytes stay the same on every machine.
type svg struct{ b strings.Builder }

func (s *svg) put(format string, args ...any) { fmt.Fprintf(&s.b, format, args...) }

func (s *svg) line(x1, y1, x2, y2 float64, style string) {
	s.put(`<path d="M%.1f %.1fL%.1f %.1f" %s/>`, x1, y1, x2, y2, style)
}

// text writes one line of text. The halo of paper keeps it readable where it
// crosses a line.
func (s *svg) text(x, y float64, anchor, class, text string) {
	s.put(`<text x="%.1f" y="%.1f" text-anchor="%s" class="%s">%s</text>`, x, y, anchor, class, html.EscapeString(text))
}

func stroke(property string) string { return fmt.Sprintf(`fill="none" stroke="var(--%s)"`, property) }

func dashed(property string) string { return stroke(property) + ` stroke-dasharray="2 4"` }

// textHeight is one line of text in a chart.
const textHeight = 16

// textWidth estimates how wide a text comes out. Half the size and a little is
// wide enough for every face the page may fall back to.
func textWidth(text string) float64 { return 6.9 * float64(len([]rune(text))) }

// broken breaks a text into lines of at most so many pixels.
func broken(text string, width float64) []string {
	var out []string
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && textWidth(line+" "+word) > width {
			out = append(out, line)
			line = ""
		}
		line = strings.TrimLeft(line+" "+word, " ")
	}
	return append(out, line)
}
