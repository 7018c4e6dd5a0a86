package arrows

import (
	"slices"
	"strings"
	"testing"
)

func TestTreeKeepsToTheTable(t *testing.T) {
	faults, err := Check("../..")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range faults {
		t.Error(f)
	}
}

// A checker that finds nothing proves nothing until it has found something.
func TestBadTreeIsCaught(t *testing.T) {
	got, err := Check("testdata/bad")
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"bad.go:9: root may not import quantity/inner (allowed: work quantity cite)",
		"bad.go:10: root may not import rules (allowed: work quantity cite)",
		"calc/water/water.go:5: calc/water may not import calc/pack (allowed: calc/numeric work quantity cite)",
		"calc/water/water.go:8: calc/water may not import gonum.org/v1/gonum/floats (allowed: none)",
		"cite/cite.go:3: cite may not import github.com/alecthomas/kong (allowed: none)",
		"mystery/a.go:1: mystery has no line in the table of arrows",
		"quantity/quantity.go:4: quantity may not import root (allowed: none)",
		"quantity/quantity.go:5: quantity may not import gonum.org/v1/gonum (allowed: github.com/quagmt/udecimal)",
		"quantity/quantity.go:8: quantity may not import github.com/quagmt/udecimals (allowed: github.com/quagmt/udecimal)",
		"rules/rules.go:4: rules may not import mystery (allowed: root refdata work quantity cite)",
	}
	if !slices.Equal(got, want) {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

func TestMissingModuleLine(t *testing.T) {
	if _, err := Check(t.TempDir()); err == nil {
		t.Error("a tree without go.mod passed")
	}
}
