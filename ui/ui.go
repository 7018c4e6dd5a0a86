// Package ui holds what the browser gets: page templates, the style sheet and
// the icon. There is no script: every page works as a document.
package ui

import (
	"embed"
	"fmt"
	"strings"
)

// Pages holds the templates.
//
//go:embed *.html
var Pages embed.FS

// Icon is the sign in the browser's tab.
//
//go:embed icon.svg
var Icon []byte

//go:embed tokens.css
var tokens string

//go:embed levigate.css
var sheet string

// mostRows is how many rows a formula's table and margin may have with every
// note at its place; beyond, notes follow each other.
const mostRows = 240

// CSS is the style sheet: the tokens, the rules, and one class for every row
// and height a margin note may have. The page's policy forbids styles in the
// page itself, so places must have names.
func CSS() []byte {
	var b strings.Builder
	b.WriteString(tokens + "\n" + sheet)
	b.WriteString("\n/* Places in the margin. */\n@media (min-width: 1121px) {\n")
	for n := 1; n <= mostRows; n++ {
		fmt.Fprintf(&b, ".at-%d{grid-row-start:%d}.to-%d{grid-row-end:%d}\n", n, n, n, n+1)
	}
	for n := 1; n <= 40; n++ {
		fmt.Fprintf(&b, ".for-%d{grid-row-end:span %d}\n", n, n)
	}
	b.WriteString("}\n")
	return []byte(b.String())
}
