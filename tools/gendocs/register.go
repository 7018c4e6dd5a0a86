package main

// The packages that declare methods, or checks of methods, have to be in the
// program for their declarations to be seen. A test finds one that is not.
import (
	_ "levigate/calc/cost"
	_ "levigate/calc/structure"
	_ "levigate/calc/water"
	_ "levigate/calc/weighing"
	_ "levigate/internal/assess"
	_ "levigate/internal/validation"
)
