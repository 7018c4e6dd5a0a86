package render

import (
	"regexp"
	"slices"
	"strings"

	"levigate/cite"
	"levigate/quantity"
	"levigate/work"
)

// Step writes one step of a working and the steps under it.
func Step(s *work.Step, width int, indent string) string {
	var b strings.Builder
	deeper := indent + "  "
	if s.Title != "" {
		title := s.Title
		if s.Method != nil {
			title += " (" + s.Method.ID + ")"
		}
		b.WriteString(Prose(title, width, indent, deeper))
	}
	switch {
	case s.Method != nil:
		b.WriteString(equation(s, width, deeper))
	case s.Text != "" && s.Title == "":
		b.WriteString(Prose(s.Text, width, indent, indent))
	case s.Text != "":
		b.WriteString(Prose(s.Text, width, deeper, deeper))
	}
	if s.Table != nil {
		b.WriteString(Table(s.Table, width, deeper))
	}
	for i, sub := range s.Steps {
		if i > 0 && (sub.Table != nil || sub.Method != nil) {
			b.WriteString("\n")
		}
		b.WriteString(Step(sub, width, deeper))
	}
	// An equation's sources are its method's: explain prints them.
	if s.Method == nil {
		for _, r := range once(s.Sources) {
			b.WriteString(Prose("source: "+r.String(), width, deeper, deeper+"  "))
		}
	}
	return b.String()
}

// equation writes the printed form, the form with the numbers in it, the
// outcome, and where each number is from.
func equation(s *work.Step, width int, indent string) string {
	hang := indent + "  "
	out := Prose(s.Text, width, indent, hang) + Prose("= "+numbers(s), width, indent, hang) +
		Prose("= "+result(s), width, indent, hang)
	t := work.Table{Head: []string{"", "", "", "", ""}}
	for _, in := range s.Inputs {
		t.Rows = append(t.Rows, []string{in.Symbol, inputValue(in), in.Means, graded(in), in.From})
	}
	_, rows, _ := strings.Cut(Table(&t, width, indent), "\n")
	return out + rows
}

// numbers is the equation with its numbers in it, without the zeros that a
// fixed count of digits leaves behind.
func numbers(s *work.Step) string { return short(s.Numbers) }

var decimal = regexp.MustCompile(`\d+\.\d+`)

// short drops the zeros behind a decimal point that say nothing.
func short(text string) string {
	return decimal.ReplaceAllStringFunc(text, func(n string) string {
		return strings.TrimRight(strings.TrimRight(n, "0"), ".")
	})
}

func inputValue(in work.Input) string {
	return Minus(short(quantity.Significant(in.Value, 5))) + Suffix(in.Unit)
}

func result(s *work.Step) string {
	return Minus(quantity.Significant(s.Result, 4)) + Suffix(s.Unit)
}

// graded is an input's evidence; an input with no origin on file (the root
// itself) has none.
func graded(in work.Input) string {
	if in.Grade == 0 && !strings.Contains(in.From, "isotherms/") {
		return ""
	}
	return in.Grade.String()
}

// pruned is a working without the sources that the figure lists as a whole.
func pruned(s *work.Step, listed []cite.Ref) *work.Step {
	if s == nil {
		return nil
	}
	out := *s
	out.Sources = slices.DeleteFunc(slices.Clone(s.Sources), func(r cite.Ref) bool { return slices.Contains(listed, r) })
	out.Steps = make([]*work.Step, len(s.Steps))
	for i := range s.Steps {
		out.Steps[i] = pruned(s.Steps[i], listed)
	}
	return &out
}

// once leaves out sources named twice: two curves often rest on one paper.
func once(refs []cite.Ref) []cite.Ref {
	var out []cite.Ref
	for _, r := range refs {
		if !slices.Contains(out, r) {
			out = append(out, r)
		}
	}
	return out
}
