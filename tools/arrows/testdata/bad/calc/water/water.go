package water

import (
	_ "example.test/bad/calc/numeric"
	_ "example.test/bad/calc/pack" // caught: topics do not know one another
	_ "example.test/bad/work"

	_ "gonum.org/v1/gonum/floats" // caught: through calc/numeric only
)
