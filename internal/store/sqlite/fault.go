package sqlite

import (
	"context"
	"errors"
	"fmt"

	driver "modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"

	"levigate"
)

// faults says for a person what the database says in codes. The first part of a
// code is its kind.
var faults = map[int][2]string{
	sqlite3.SQLITE_FULL:     {"there is no room on the disk; the last edit was not kept, everything before it was", "make room, then do it again"},
	sqlite3.SQLITE_READONLY: {"the workspace can't be written to", "look at who may write to its folder and file"},
	sqlite3.SQLITE_CANTOPEN: {"the workspace can't be opened", "look at who may read and write its folder"},
	sqlite3.SQLITE_IOERR:    {"the disk could not be read or written", "look at the room on the disk and at its health, then do it again"},
	sqlite3.SQLITE_BUSY:     {"another program holds the workspace", "end it, or wait a moment and do it again"},
	sqlite3.SQLITE_CORRUPT:  {"the workspace's file is damaged", "keep a copy of the file as it is, then bring back a backup: levigate restore FILE --replace"},
	sqlite3.SQLITE_NOTADB:   {"the file is no Levigate workspace", "name the folder of a workspace"},
}

func codeOf(err error) int {
	if e, ok := errors.AsType[*driver.Error](err); ok {
		return e.Code() & 0xff
	}
	return 0
}

// told gives an error of the database its words. One that has some, or that only
// says that nobody waits any longer, stays as it is.
func told(ctx context.Context, doing string, err error) error {
	switch {
	case err == nil:
		return nil
	case ctx.Err() != nil:
		return ctx.Err()
	case levigate.CodeOf(err) != levigate.Internal:
		return err
	}
	if e, ok := errors.AsType[*levigate.Error](err); ok {
		return e
	}
	out := &levigate.Error{Code: levigate.Internal, Message: doing + " failed", Cause: fmt.Errorf("%s: %w", doing, err)}
	if f, ok := faults[codeOf(err)]; ok {
		out.Message, out.Help = f[0], f[1]
	}
	return out
}

func refused(code levigate.Code, help, format string, args ...any) error {
	return &levigate.Error{Code: code, Message: fmt.Sprintf(format, args...), Help: help}
}
