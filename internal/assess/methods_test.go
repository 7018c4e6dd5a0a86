package assess

import (
	"testing"

	"levigate/work/worktest"
)

// Every method a formula check uses is proved, wherever it is declared.
func TestMethods(t *testing.T) { worktest.Run(t) }
