package render

import (
	"fmt"
	"strings"

	"levigate/work"
)

// Width is how many columns a text is written for unless asked otherwise.
const Width = 96

// Text writes a figure with everything one may ask of it.
func Text(f *work.Figure, width int) string {
	var b strings.Builder
	b.WriteString(heading(f, width))
	b.WriteString(Prose(answer(f), width, "  ", "  "))
	for _, n := range f.Notes {
		if f.State != work.Missing {
			b.WriteString(Prose(n, width, "  note: ", "  "))
		}
	}
	if f.Calculated != nil {
		b.WriteString(Prose("reading "+f.Reading+" takes the place of the calculated "+calculated(f), width, "  ", "  "))
	}
	if f.Working != nil {
		for _, s := range pruned(f.Working, f.Sources).Steps {
			b.WriteString("\n" + Step(s, width, "  "))
		}
	}
	b.WriteString(support(f, width))
	return b.String()
}

// heading is the title with the figure's id at the right edge.
func heading(f *work.Figure, width int) string {
	space := width - wide(f.Title) - wide(f.ID)
	return f.Title + strings.Repeat(" ", max(space, 2)) + f.ID + "\n"
}

// answer is the value with its band, evidence and sentence.
func answer(f *work.Figure) string {
	if f.State == work.Missing {
		return None + " " + Sentence(f)
	}
	return Value(f) + Suffix(f.Unit) + ", " + Sentence(f) + "; " + Evidence(f)
}

// support is what the figure rests on: causes, readings, method, sources.
func support(f *work.Figure, width int) string {
	var b strings.Builder
	if t, left := causes(f); len(t.Rows) > 0 {
		b.WriteString("\n" + Table(&t, width, "  "))
		if left > 0 {
			b.WriteString(fmt.Sprintf("  and %d smaller\n", left))
		}
	}
	if settle := Settle(f); len(settle) > 0 {
		b.WriteString("\n")
		for _, s := range settle {
			b.WriteString(Prose("a reading would replace this: "+s, width, "  ", "    "))
		}
	}
	if m := f.Method; m != nil {
		b.WriteString("\n" + Prose("method: "+m.Title+" ("+m.ID+")", width, "  ", "    "))
	}
	if len(f.Sources) > 0 {
		b.WriteString("  sources\n")
		for _, r := range once(f.Sources) {
			b.WriteString(Prose(r.String(), width, "    ", "      "))
		}
	}
	return b.String()
}
