package formulafile

import (
	"errors"
	"fmt"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/parser"
	"github.com/goccy/go-yaml/token"

	"levigate"
)

// parse builds the tree. Keys written twice are let through: the walk reports
// them with both places.
func (r *reader) parse(name string, tokens token.Tokens) ast.Node {
	file, err := build(tokens)
	var fault interface {
		GetToken() *token.Token
		GetMessage() string
	}
	switch {
	case errors.As(err, &fault):
		r.syntax(placeOf(fault.GetToken()), fault.GetMessage(), fault.GetToken())
		return nil
	case err != nil:
		r.report(levigate.Place{}, "take out what was added last until it reads again, and please send us the file", "the YAML reader gave up on %s (%v)", name, err)
		return nil
	}
	for _, d := range file.Docs {
		if d.Body != nil {
			return d.Body
		}
	}
	r.report(levigate.Place{}, "begin with levigate: "+Edition, "the file is empty")
	return nil
}

// build calls the parser. It is not ours and has panicked on odd input before.
func build(tokens token.Tokens) (file *ast.File, err error) {
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("%v", p)
		}
	}()
	return parser.Parse(tokens, 0, parser.AllowDuplicateMapKey())
}
