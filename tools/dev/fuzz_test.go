package main

import (
	"slices"
	"testing"
)

func TestFuzzTargets(t *testing.T) {
	listed := `?   	m/cmd	[no test files]
FuzzRead
FuzzPrint
ok  	m/file	0.012s
ok  	m/none	0.003s
FuzzParse
ok  	m/quantity	(cached)
`
	want := []target{{"m/file", "FuzzRead"}, {"m/file", "FuzzPrint"}, {"m/quantity", "FuzzParse"}}
	if got := fuzzTargets(listed); !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}
