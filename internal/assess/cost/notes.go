package cost

import (
	"fmt"
	"strconv"
	"time"

	"levigate"
)

// notes says of the whole what a reader must know to take it for what it is.
func notes(c *levigate.Costing, s *shelf) []string {
	var out []string
	say := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	if lines := linesOf(c, func(p *levigate.Price) bool { return !p.FreightStated }); len(lines) > 0 {
		say("No freight is written for line%s %s: priced without any. Write 0 where there was none.", plural(lines), joined(lines, 12))
	}
	if lines := linesOf(c, func(p *levigate.Price) bool { return p.Old(c.Day) }); len(lines) > 0 {
		say("The price%s of line%s %s %s over a year old: ask again before relying on the cost.", plural(lines), plural(lines), joined(lines, 12), isAre(lines))
	}
	if n := s.later; n > 0 {
		say("%s dated after %s and left out.", counted(n, "price is", "prices are"), c.Day.Format(time.DateOnly))
	}
	if n := len(s.unknown); n > 0 {
		say("%s no raw material that is known here, and not used: %s.", counted(n, "price names", "prices name"), joined(s.unknown, 5))
	}
	return out
}

func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// linesOf numbers, from 1, the lines whose price is so.
func linesOf(c *levigate.Costing, is func(*levigate.Price) bool) []string {
	var out []string
	for i := range c.Lines {
		if p := c.Lines[i].Price; p != nil && is(p) {
			out = append(out, strconv.Itoa(c.Lines[i].Line+1))
		}
	}
	return out
}

func plural(lines []string) string {
	if len(lines) == 1 {
		return ""
	}
	return "s"
}

func isAre(lines []string) string {
	if len(lines) == 1 {
		return "is"
	}
	return "are"
}
