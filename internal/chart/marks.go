package chart

import "math"

// limits draws the named vertical lines. Their names stand as a stair at the
// upper left, the highest limit on top, where a moisture curve leaves room.
func (p *plot) limits() {
	y := float64(top) + 8
	base := float64(p.Height - bottom)
	for i := len(p.Limits) - 1; i >= 0; i-- {
		l := p.Limits[i]
		x := p.x(l.X)
		lines := broken(l.Text, x-left-8)
		p.line(x, y-8, x, base, dashed("ink-2"))
		for _, text := range lines {
			p.text(x-6, y, "end", "tick2 halo", text)
			y += textHeight
		}
		y += 4
	}
}

// stretch hatches a range along x and names it.
func (p *plot) stretch() {
	s := p.Stretch
	if s == nil {
		return
	}
	from, to := math.Max(p.x(s.From), left), math.Min(p.x(s.To), float64(p.Width-right))
	base := float64(p.Height - bottom)
	if to < from {
		return
	}
	var hatch svg
	for x := from - base; x < to; x += 8 {
		// A slanted line of the stretch's own width, cut at its sides by hand:
		// a pattern would need another name on the page.
		x1, y1, x2, y2 := x, base, x+base-top, float64(top)
		if x1 < from {
			y1 -= from - x1
			x1 = from
		}
		if x2 > to {
			y2 += x2 - to
			x2 = to
		}
		if x1 < x2 {
			hatch.put("M%.1f %.1fL%.1f %.1f", x1, y1, x2, y2)
		}
	}
	p.put(`<path d="%s" %s/>`, hatch.b.String(), stroke("hair"))
	p.line(from, top, from, base, stroke("rule"))
	p.line(to, top, to, base, stroke("rule"))
	p.beside(to+8, from, top+12, s.Text, s.Note)
}

// beside writes a name and a note to the right of a mark, or to its left where
// there is more room.
func (p *plot) beside(x, other, y float64, name, note string) {
	anchor, room := "start", float64(p.Width-right)-x
	if leftRoom := other - 8 - left; textWidth(name) > room && leftRoom > room {
		x, anchor, room = other-8, "end", leftRoom
	}
	p.say(x, y, anchor, room, name, note)
}

// say writes a name and a note below it, broken to the room there is.
func (p *plot) say(x, y float64, anchor string, room float64, name, note string) {
	for _, t := range []struct{ text, class string }{{name, "label halo"}, {note, "tick2 halo"}} {
		if t.text == "" {
			continue
		}
		for _, line := range broken(t.text, room) {
			p.text(x, y, anchor, t.class, line)
			y += textHeight
		}
	}
}

// bracket draws a range along y with its name beside it, under the curve.
func (p *plot) bracket() {
	b := p.Bracket
	if b == nil {
		return
	}
	x, y1, y2 := p.x(b.X), p.y(b.From), p.y(b.To)
	ink := stroke("ink") + ` stroke-width="1.5"`
	if p.Point != nil {
		p.line(p.x(p.Point.X)+8, y1, x-6, y1, `fill="none" stroke="var(--ink-2)" stroke-dasharray="1 3"`)
	}
	p.line(x, y1, x, y2, ink)
	p.line(x-5, y1, x+5, y1, ink)
	p.line(x-5, y2, x+5, y2, ink)
	if y1-y2 < 2*textHeight+16 {
		return // too short to name; the text below the chart says it
	}
	room := float64(p.Width-right) - x - 10
	more := len(broken(b.Text, room)) + len(broken(b.Note, room)) - 2
	p.say(x+10, y1-20-float64(more*textHeight), "start", room, b.Text, b.Note)
}

// point draws the formula itself: an open circle with its whisker in ink.
func (p *plot) point() {
	if p.Point == nil {
		return
	}
	x, y := p.x(p.Point.X), p.y(p.Point.Y)
	ink := stroke("ink") + ` stroke-width="1.5"`
	lift := 12.0
	if p.Point.Along == AlongX {
		low, high := p.x(p.Point.Low), p.x(p.Point.High)
		p.line(low, y, high, y, ink)
		p.line(low, y-4, low, y+4, ink)
		p.line(high, y-4, high, y+4, ink)
	} else {
		low, high := p.y(p.Point.Low), p.y(p.Point.High)
		p.line(x, low, x, high, ink)
		p.line(x-4, low, x+4, low, ink)
		p.line(x-4, high, x+4, high, ink)
		lift = y - high + 10
	}
	p.put(`<circle cx="%.1f" cy="%.1f" r="5" fill="var(--paper)" stroke="var(--ink)" stroke-width="2"/>`, x, y)
	half := textWidth(p.Point.Text) / 2
	at := math.Max(math.Min(x, float64(p.Width-right)-half), left+half)
	p.text(at, math.Max(y-lift, top+8), "middle", "label halo", p.Point.Text)
}
