package main

import (
	"fmt"
	"strings"
)

// sheet collects a page in Markdown.
type sheet struct{ strings.Builder }

// newSheet starts a page with its title and the note that nobody edits it.
func newSheet(title string) *sheet {
	s := &sheet{}
	s.WriteString("<!-- Written by tools/gendocs from the code. Edit the code. -->\n\n# " + title + "\n")
	return s
}

func (s *sheet) heading(level int, format string, args ...any) {
	fmt.Fprintf(s, "\n%s %s\n", strings.Repeat("#", level), fmt.Sprintf(format, args...))
}

func (s *sheet) paragraph(format string, args ...any) {
	fmt.Fprintf(s, "\n%s\n", fmt.Sprintf(format, args...))
}

func (s *sheet) list(lines []string) {
	s.WriteString("\n")
	for _, l := range lines {
		s.WriteString("- " + inline(l) + "\n")
	}
}

// mono prints lines as they stand.
func (s *sheet) mono(lines []string) {
	s.WriteString("\n```text\n" + strings.Join(lines, "\n") + "\n```\n")
}

func (s *sheet) table(head []string, rows [][]string) {
	if len(rows) == 0 {
		return
	}
	s.WriteString("\n")
	s.row(head)
	s.WriteString(strings.Repeat("|---", len(head)) + "|\n")
	for _, r := range rows {
		s.row(r)
	}
}

func (s *sheet) row(cells []string) {
	for _, c := range cells {
		c = strings.ReplaceAll(inline(c), "|", "\\|")
		s.WriteString("| " + strings.ReplaceAll(c, "\n", " ") + " ")
	}
	s.WriteString("|\n")
}

// inline keeps text from being read as Markdown.
var inline = strings.NewReplacer("<", "&lt;", ">", "&gt;", "*", "\\*", "_", "\\_", "`", "\\`").Replace
