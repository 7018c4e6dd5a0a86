package api

import (
	"context"

	"levigate"
)

// Workshop is where the page gets its formulas from.
type Workshop interface {
	Sheets(ctx context.Context) ([]Sheet, error)
	// Sheet gives one formula by name, with curves and workings. A name that
	// is not there is a levigate.Error with code NotFound.
	Sheet(ctx context.Context, name string) (*Sheet, error)
	// Demo reports whether the formulas are the made-up ones.
	Demo() bool
	// Stamp says what answers are made with.
	Stamp() string
}

// Sheet is one formula file and what the formula check says about it. Without
// an assessment there are problems.
type Sheet struct {
	Name       string // in the address
	File       string
	Assessment *levigate.Assessment
	Problems   []levigate.Problem
	Product    string // in words
	Answer     string // the water answer in a sentence
	Cautions   string
}
