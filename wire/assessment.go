package wire

import "levigate"

// AssessmentSchema names this edition of the answer.
const AssessmentSchema = "levigate/assessment/1"

// Assessment is one formula check.
type Assessment struct {
	Schema      string       `json:"schema"`
	File        string       `json:"file"`
	Made        Made         `json:"made"`
	Conditions  Conditions   `json:"conditions"`
	Formula     Formula      `json:"formula"`
	Composition []Contained  `json:"composition"`
	Held        []Held       `json:"held"`
	Figures     []Figure     `json:"figures"`
	Curves      []Curve      `json:"curves"`
	Findings    []Finding    `json:"findings"`
	Ingredients []Ingredient `json:"ingredients"`
}

// Made says what an answer was made with: the same three give the same answer.
type Made struct {
	Program   string `json:"program"`
	Refdata   string `json:"refdata"`   // fingerprint of the embedded tables
	Workspace string `json:"workspace"` // revision of the workspace; empty without one
}

// Conditions are what the check was made for.
type Conditions struct {
	Temperature float64  `json:"temperature"`        // °C
	Humidity    *float64 `json:"humidity,omitempty"` // % RH, when asked
}

// Of turns a formula check into JSON's shape.
func Of(a *levigate.Assessment, file string, made Made) Assessment {
	out := Assessment{
		Schema: AssessmentSchema, File: file, Made: made,
		Conditions:  Conditions{Temperature: a.Conditions.Temperature},
		Formula:     formulaOf(a.Formula),
		Composition: each(a.Composition.Contained, containedOf),
		Held:        each(a.Composition.Held, heldOf),
		Figures:     each(a.Figures, FigureOf),
		Curves:      each(a.Curves, curveOf),
		Findings:    each(a.Findings, findingOf),
		Ingredients: each(a.Ingredients, ingredientOf),
	}
	if a.Conditions.Humidity > 0 {
		out.Conditions.Humidity = number(a.Conditions.Humidity)
	}
	return out
}

// each never gives nil: an empty list is [] and not null.
func each[S ~[]T, T, U any](in S, f func(*T) U) []U {
	out := make([]U, len(in))
	for i := range in {
		out[i] = f(&in[i])
	}
	return out
}
