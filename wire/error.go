package wire

import "levigate"

// ErrorSchema names this edition of a refusal.
const ErrorSchema = "levigate/error/1"

// Error takes the place of an answer for a file that could not be read.
type Error struct {
	Schema string  `json:"schema"`
	File   string  `json:"file"`
	Errors []Fault `json:"errors"`
}

// Fault is one thing that is wrong with a file, where, and what to do about
// it. A fault of the whole file stands at 1:1.
type Fault struct {
	Line   int    `json:"line"`
	Column int    `json:"column"`
	Text   string `json:"text"`
	Help   string `json:"help"`
}

// ErrorOf turns problems into JSON's shape.
func ErrorOf(file string, problems []levigate.Problem) Error {
	return Error{Schema: ErrorSchema, File: file, Errors: each(problems, faultOf)}
}

func faultOf(p *levigate.Problem) Fault {
	return Fault{Line: max(p.Line, 1), Column: max(p.Column, 1), Text: p.Text, Help: p.Help}
}
