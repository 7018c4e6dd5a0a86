package levigate

import "errors"

// Code is an error's kind, for machines.
type Code string

// The codes. Exit statuses and HTTP statuses are made from them in one table
// each (cmd/levigate, internal/api).
const (
	Invalid  Code = "invalid"   // what was written can't be used
	NotFound Code = "not-found" // the thing named does not exist
	Conflict Code = "conflict"  // it was changed or made by someone else meanwhile
	Internal Code = "internal"  // our fault
)

// Error has three parts: a code for machines, a message for the person, and a
// cause for the log.
type Error struct {
	Code    Code
	Message string
	Help    string
	Cause   error
}

func (e *Error) Error() string { return e.Message }

func (e *Error) Unwrap() error { return e.Cause }

// CodeOf is the code of an error; Internal for one that carries none.
func CodeOf(err error) Code {
	if e, ok := errors.AsType[*Error](err); ok {
		return e.Code
	}
	if _, clash := errors.AsType[*ClashError](err); clash {
		return Conflict
	}
	return Internal
}
