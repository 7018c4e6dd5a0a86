package main

import (
	"fmt"
	"io"
)

// heard passes on what is written and keeps the first error. Those who print
// text line by line don't look at each; a list cut short by a full disk would
// else end as if it were whole.
type heard struct {
	io.Writer
	err error
}

func (h *heard) Write(b []byte) (int, error) {
	n, err := h.Writer.Write(b)
	if h.err == nil {
		h.err = err
	}
	return n, err
}

// status is that of a command, once it is known whether its answer came through.
func (h *heard) status(of int, errs io.Writer) int {
	if h.err == nil {
		return of
	}
	if of != statusFault { // else it was said already
		fmt.Fprintf(errs, "levigate: the answer is cut short: %s\n  help: throw away what was written; look at the room on the disk and try again\n", reason(h.err))
	}
	return statusFault
}
