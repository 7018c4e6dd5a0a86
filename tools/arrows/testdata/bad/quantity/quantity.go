package quantity

import (
	_ "example.test/bad"   // caught: quantity knows nothing of ours
	_ "gonum.org/v1/gonum" // caught: not its module

	_ "github.com/quagmt/udecimal"
	_ "github.com/quagmt/udecimals" // caught: another module that begins alike
)
