package rules

import (
	_ "example.test/bad/mystery" // caught
	_ "example.test/bad/refdata"

	_ "github.com/alecthomas/kong"
)
