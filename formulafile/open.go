package formulafile

import (
	"errors"
	"io"
	"io/fs"
	"os"

	"levigate"
)

// ReadFile reads the formula file at a path. The error tells that the file
// could not be had at all; what is wrong inside it are problems.
func ReadFile(path string) (*levigate.Formula, []levigate.Problem, error) {
	data, err := Bytes(path, "formula", MaxBytes)
	if err != nil {
		return nil, nil, err
	}
	formula, problems := Read(path, data)
	return formula, problems, nil
}

// Bytes reads a file of some kind ("formula", "price list") that a person named:
// at most one byte more than most, which tells too large from just fitting.
func Bytes(path, kind string, most int64) ([]byte, error) {
	// Asked before opening: opening a pipe that nobody writes to would wait.
	info, err := os.Stat(path)
	if err != nil {
		return nil, unopened(path, err)
	}
	if info.IsDir() {
		return nil, refused(path, "is a folder", "name a "+kind+" file in it")
	}
	if !info.Mode().IsRegular() {
		return nil, refused(path, "is a device or a pipe, not a file", "save the "+kind+" to a file and name that")
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, unopened(path, err)
	}
	defer f.Close()
	data, err := load(f, most)
	if err != nil {
		return nil, unopened(path, err)
	}
	return data, nil
}

func load(f io.Reader, most int64) ([]byte, error) { return io.ReadAll(io.LimitReader(f, most+1)) }

func refused(path, what, help string) error {
	return &levigate.Error{Code: levigate.Invalid, Message: path + " " + what, Help: help}
}

func unopened(path string, cause error) error {
	e := &levigate.Error{Code: levigate.Invalid, Message: path + " can't be read", Help: "see whether the disk or the network drive is there", Cause: cause}
	switch {
	case errors.Is(cause, fs.ErrNotExist):
		e.Code, e.Message, e.Help = levigate.NotFound, path+" does not exist", "see how the name is spelled and in which folder you are"
	case errors.Is(cause, fs.ErrPermission):
		e.Message, e.Help = path+" may not be read by you", "change the file's permissions, or copy it to a place of your own"
	}
	return e
}
