package structure

import (
	"testing"

	"levigate/work/worktest"
)

func TestMethods(t *testing.T) { worktest.Run(t) }
