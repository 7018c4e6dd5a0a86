package program

import (
	"errors"
	"strings"

	"levigate"
	"levigate/formulafile"
)

// File is a formula file to check: a path, or bytes that came another way.
type File struct {
	Name string
	Data []byte // nil: read the path in Name
}

// load reads a file and finds out what its lines mean. With problems there is
// no formula.
func (p *Program) load(file File) (*levigate.Formula, []levigate.Problem) {
	f, problems := read(file)
	if len(problems) > 0 {
		return nil, problems
	}
	if problems := f.Resolve(p.Library); len(problems) > 0 {
		return nil, problems
	}
	return f, nil
}

func read(file File) (*levigate.Formula, []levigate.Problem) {
	if file.Data != nil {
		return formulafile.Read(file.Name, file.Data)
	}
	f, problems, err := formulafile.ReadFile(file.Name)
	if err != nil {
		return nil, unread(file.Name, err)
	}
	return f, problems
}

// unread is an error of a whole file as its one problem; the place in front names
// the file already.
func unread(name string, err error) []levigate.Problem {
	if e, ok := errors.AsType[*levigate.Error](err); ok {
		return []levigate.Problem{{Text: strings.TrimPrefix(e.Message, name+" "), Help: e.Help}}
	}
	return []levigate.Problem{{Text: err.Error()}}
}
