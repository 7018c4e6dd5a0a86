package main

import (
	"errors"
	"fmt"
	"io"

	"levigate"
)

// The exit statuses. Where several files are checked the highest wins.
const (
	statusDone    = 0 // assessed or answered
	statusBlocked = 1 // a stop rule is broken
	statusUnread  = 2 // a file or what was typed could not be read
	statusFault   = 3 // our fault
)

const exitHelp = `

Exit status: 0 done; 1 something must be settled before release; 2 a file, or what was typed, could not be read; 3 our fault. The highest wins.`

// stopped is the error of a command that has said all and only wants a status.
type stopped int

func (s stopped) Error() string { return fmt.Sprintf("status %d", int(s)) }

// statuses is the one table from error codes to exit statuses.
var statuses = map[levigate.Code]int{
	levigate.Invalid:  statusUnread,
	levigate.NotFound: statusUnread,
	levigate.Conflict: statusUnread,
	levigate.Internal: statusFault,
}

// statusOf prints an error for a person and gives its status.
func statusOf(err error, errs io.Writer) int {
	if err == nil {
		return statusDone
	}
	if s, ok := errors.AsType[stopped](err); ok {
		return int(s)
	}
	fmt.Fprintf(errs, "levigate: %s\n", err)
	if e, ok := errors.AsType[*levigate.Error](err); ok && e.Help != "" {
		fmt.Fprintf(errs, "  help: %s\n", e.Help)
	}
	return statuses[levigate.CodeOf(err)]
}
