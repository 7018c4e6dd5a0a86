// Package bad is a small tree whose imports break the table of arrows. Each
// line that must be caught says so; the rest must pass.
package bad

import (
	_ "strings"

	_ "example.test/bad/quantity"
	_ "example.test/bad/quantity/inner" // caught: quantity alone has the arrow
	_ "example.test/bad/rules"          // caught: root knows no rules
)
