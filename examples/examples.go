// Package examples holds whole made-up products of a made-up workshop. They
// are the demo the page opens with and the golden tests of the program; nobody
// has made or tested any of them.
package examples

import "embed"

// Files holds the formula files.
//
//go:embed *.formula.yaml
var Files embed.FS
