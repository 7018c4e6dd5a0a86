package chart

import (
	"html"
	"math"
	"strings"
)

// The space around the plot: room for y ticks at the left, for x ticks and the
// axis' title below, for half a figure above.
const (
	left, right = 38, 12
	top, bottom = 12, 44
)

// plot is a chart being drawn.
type plot struct {
	svg
	*Spec
	id string // names the clip of this chart among others on the page
}

// Draw gives the chart as an inline SVG image. The id is unique on its page.
func Draw(spec *Spec, id string) string {
	p := &plot{Spec: spec, id: html.EscapeString(id)}
	p.put(`<svg class="chart" viewBox="0 0 %d %d" width="%d" height="%d" role="img" aria-label="%s">`,
		p.Width, p.Height, p.Width, p.Height, html.EscapeString(p.Name))
	p.put(`<clipPath id="%s"><rect x="%d" y="%d" width="%d" height="%d"/></clipPath>`,
		p.id, left, top, p.Width-left-right, p.Height-top-bottom)
	p.axes()
	p.stretch()
	p.limits()
	p.curve()
	p.bracket()
	p.point()
	p.foot()
	p.put("</svg>")
	return p.b.String()
}

func (p *plot) x(v float64) float64 {
	return left + (v-p.X.Min)/(p.X.Max-p.X.Min)*float64(p.Width-left-right)
}

func (p *plot) y(v float64) float64 {
	return float64(p.Height-bottom) - (v-p.Y.Min)/(p.Y.Max-p.Y.Min)*float64(p.Height-top-bottom)
}

func (p *plot) axes() {
	edge, base := float64(p.Width-right), float64(p.Height-bottom)
	for _, t := range p.Y.Ticks {
		y := p.y(t.At)
		p.line(left, y, edge, y, stroke("hair"))
		p.text(left-8, y+4, "end", "tick", t.Text)
	}
	for _, t := range p.X.Ticks {
		x := p.x(t.At)
		p.line(x, base, x, base+5, stroke("rule"))
		p.text(x, base+20, "middle", "tick", t.Text)
	}
	p.line(left, base, edge, base, stroke("rule"))
	p.text(edge, base+38, "end", "tick", p.X.Title)
}

// curve draws the band and the line, cut off where they leave the plot.
func (p *plot) curve() {
	if len(p.Line) == 0 {
		return
	}
	p.put(`<g clip-path="url(#%s)">`, p.id)
	if len(p.Low) > 0 && len(p.High) == len(p.Low) && len(p.Low) <= len(p.At) {
		p.put(`<path d="%s%sZ" fill="var(--%s)" fill-opacity="0.18"/>`, p.path(p.High, false, 'M'), p.path(p.Low, true, 'L'), p.Hue)
	}
	p.put(`<path d="%s" %s stroke-width="1.75"/></g>`, p.path(p.Line, false, 'M'), stroke(p.Hue))
	if last := len(p.Line) - 1; p.End != "" {
		x, y := math.Min(p.x(p.At[last]), float64(p.Width-right)), p.y(p.Line[last])
		p.text(x, math.Max(y-10, top+8), "end", "label halo", p.End)
	}
}

// path walks along values, backwards for the underside of a band.
func (p *plot) path(values []float64, back bool, first byte) string {
	var s svg
	for i := range values {
		j, do := i, byte('L')
		if back {
			j = len(values) - 1 - i
		}
		if i == 0 {
			do = first
		}
		// A curve that runs off to the sky is cut well outside the plot, so
		// that no number in the path grows long.
		y := math.Max(p.y(values[j]), -2*float64(p.Height))
		s.put("%c%.1f %.1f", do, p.x(p.At[j]), y)
	}
	return s.b.String()
}

func (p *plot) foot() {
	if len(p.Foot) == 0 {
		return
	}
	y := float64(p.Height-bottom) - 6
	var edge float64
	for _, t := range p.Foot {
		x := p.x(t.At)
		if x-textWidth(t.Text)/2 < edge+4 {
			continue // too close to the one before
		}
		p.text(x, y, "middle", "tick halo", t.Text)
		edge = x + textWidth(t.Text)/2
	}
	if rest := float64(p.Width-right) - edge - 8; textWidth(p.FootTitle) < rest {
		p.text(edge+8, y, "start", "tick halo", strings.TrimSpace(p.FootTitle))
	}
}
