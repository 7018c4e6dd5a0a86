package sheet

import (
	"fmt"
	"strings"

	"levigate"
	"levigate/formulafile"
)

// before is a formula around the raw materials of its own, which are all that is
// read of it.
const before = "levigate: " + formulafile.Edition + "\ncode: X\nname: X\nproduct: other-leave-on\nlines: [{material: X, percent: 100}]\nmaterials:\n"

var linesBefore = strings.Count(before, "\n")

// own reads the raw materials of the formula's own as the formula file writes
// them under materials. One that cannot be read leaves out all: they may name
// one another's code.
func (r *reader) own(text string) []*levigate.Material {
	if strings.TrimSpace(text) == "" {
		return nil
	}
	// Indented, no line of it can end the list and begin another key.
	text = "  " + strings.ReplaceAll(strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(text), "\n", "\n  ")
	f, problems := formulafile.Read("own", []byte(before+text+"\n"))
	for _, p := range problems {
		p.Line, p.Column = max(p.Line-linesBefore, 1), max(p.Column-2, 1)
		r.problems = append(r.problems, ownProblem(p))
	}
	if f == nil {
		return nil
	}
	for _, m := range f.Materials {
		m.Place = levigate.Place{Line: max(m.Place.Line-linesBefore, 1), Column: max(m.Place.Column-2, 1)}
	}
	return f.Materials
}

func ownProblem(p levigate.Problem) Problem {
	return Problem{"head", "", "own", fmt.Sprintf("own raw materials, line %d: %s", max(p.Line, 1), p.Text), p.Help}
}

// ownText writes raw materials as they stand under materials, without the
// indentation.
func ownText(materials []*levigate.Material) string {
	if len(materials) == 0 {
		return ""
	}
	file := string(formulafile.Write(&levigate.Formula{Materials: materials}))
	_, text, _ := strings.Cut(file, "\nmaterials:\n")
	lines := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	for i := range lines {
		lines[i] = strings.TrimPrefix(lines[i], "  ")
	}
	return strings.Join(lines, "\n")
}
