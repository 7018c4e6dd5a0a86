package main

const equation = `package TOPIC

import (
	"levigate/quantity"
	"levigate/work"
)

// FUNC gives … :
//
//	y = x
//
// x is …. Say here where it holds and how good it is, and cite at the line
// where a number comes from somewhere.
func FUNC(x float64) float64 {
	return x
}

var MethodFUNC = work.Register(&work.Method{
	ID:    "TOPIC.NAME",
	Title: "",  // what it gives, in words
	Kind:  work.Equation,
	Text:  "x", // printed, and compared with the function: + − × / ^, brackets, exp, ln, log10, sqrt, min, max
	Symbols: []work.Symbol{
		{Name: "x", Means: "", Unit: quantity.One, Min: 0, Max: 1}, // the range it is stated for
	},
	Unit:     quantity.One,
	Accuracy: "",  // "not stated" is an answer
	Sources:  nil, // or Own: true, with "own rule" in the title
	Checks: []work.Check{
		// One at least that our own output did not make: Published with its
		// source, Independent, or Law.
	},
	Func: func(in []float64) float64 { return FUNC(in[0]) },
})
`

const procedural = `package TOPIC

import (
	"levigate/quantity"
	"levigate/work"
)

// FUNC gives … .
//
// Say here how, with the equation set off, each symbol with its unit, where it
// holds and how good it is.
func FUNC(x float64) float64 {
	return x
}

var MethodFUNC = work.Register(&work.Method{
	ID:       "TOPIC.NAME",
	Title:    "", // what it gives, in words
	Kind:     work.Procedure,
	Text:     "", // prose: what is added up, solved or followed
	Unit:     quantity.One,
	Accuracy: "",  // "not stated" is an answer
	Sources:  nil, // or Own: true, with "own rule" in the title
	Checks: []work.Check{
		// What fits: a residual near zero, a closed form, a conserved quantity, a
		// limit, a second slow version. One at least that our own output did not
		// make.
	},
})
`

const doc = `// Package TOPIC … Say in a sentence what it answers; it knows no formula files,
// users or databases, so that it can be read beside the papers.
package TOPIC
`

const test = `package TOPIC

import (
	"testing"

	"levigate/work/worktest"
)

func TestMethods(t *testing.T) { worktest.Run(t) }
`
