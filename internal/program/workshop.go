package program

import (
	"cmp"
	"context"
	"errors"
	"io/fs"
	"strings"

	"levigate"
	"levigate/examples"
	"levigate/formulafile"
	"levigate/internal/api"
)

var _ api.Workshop = (*Program)(nil)

// suffix ends the name of a formula file.
const suffix = ".formula.yaml"

// Sheets checks every formula file of the workshop's folder. They are read
// anew each time, so that a file saved in an editor shows at the next reload.
func (p *Program) Sheets(ctx context.Context) ([]api.Sheet, error) {
	names, err := fs.Glob(p.Folder, "*"+suffix)
	if err != nil {
		return nil, err
	}
	out := make([]api.Sheet, 0, len(names))
	for _, name := range names {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		out = append(out, p.sheet(name, Input{Conditions: room()}))
	}
	return out, nil
}

// Sheet is one formula with everything the page shows of it. Its name is the
// file's without the ending; only names that stand in the folder are opened.
func (p *Program) Sheet(ctx context.Context, name string) (*api.Sheet, error) {
	names, err := fs.Glob(p.Folder, "*"+suffix)
	if err != nil {
		return nil, err
	}
	for _, n := range names {
		if strings.EqualFold(strings.TrimSuffix(n, suffix), name) {
			s := p.sheet(n, Input{Conditions: room(), Curves: true, Working: true})
			return &s, ctx.Err()
		}
	}
	return nil, &levigate.Error{Code: levigate.NotFound, Message: "no formula is called " + quoted(name), Help: "the list of formulas names those there are"}
}

// Demo reports whether the workshop is the embedded one.
func (p *Program) Demo() bool { return p.Folder == fs.FS(examples.Files) }

// Stamp is what the foot of a page says it was made with.
func (p *Program) Stamp() string {
	made := p.Made()
	return made.Program + ", reference data " + made.Refdata + ", " + p.Clock().Format("2006-01-02")
}

func (p *Program) sheet(file string, in Input) api.Sheet {
	s := api.Sheet{Name: strings.TrimSuffix(file, suffix), File: file}
	data, err := readAll(p.Folder, file)
	if err != nil {
		s.Problems = []levigate.Problem{{Text: "can't be read: " + err.Error()}}
		return s
	}
	f, problems := p.load(File{Name: file, Data: data})
	if s.Problems = problems; f != nil {
		s.Assessment = p.check(f, in)
		s.Answer, s.Cautions = Answer(s.Assessment), Cautions(s.Assessment)
		s.Product = ProductWords(f.Product)
	}
	return s
}

// readAll reads no more than a formula file may hold, and one byte to tell.
func readAll(folder fs.FS, name string) ([]byte, error) {
	// Asked before opening: opening a pipe that nobody writes to would wait.
	if info, err := fs.Stat(folder, name); err != nil || !info.Mode().IsRegular() {
		return nil, cmp.Or(err, errors.New("it is no ordinary file"))
	}
	f, err := folder.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return ReadUpTo(f, formulafile.MaxBytes+1)
}

func room() levigate.Conditions { return levigate.Conditions{Temperature: levigate.Room} }
