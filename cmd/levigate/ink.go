package main

import (
	"io"
	"os"
)

// ink says whether colour and weight are wanted: on a terminal, and unless the
// reader has set NO_COLOR. Nothing is ever told by colour alone.
type ink bool

func inkFor(out io.Writer) ink {
	return ink(os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb" && terminal(out))
}

// terminal reports whether out is one.
func terminal(out io.Writer) bool {
	if h, ok := out.(*heard); ok {
		out = h.Writer
	}
	file, ok := out.(*os.File)
	if !ok {
		return false
	}
	info, err := file.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

func (i ink) with(code, text string) string {
	if !i {
		return text
	}
	return "\x1b[" + code + "m" + text + "\x1b[0m"
}

func (i ink) bold(text string) string  { return i.with("1", text) }
func (i ink) red(text string) string   { return i.with("1;31", text) }
func (i ink) amber(text string) string { return i.with("33", text) }
func (i ink) plain(text string) string { return i.with("1", text) }
