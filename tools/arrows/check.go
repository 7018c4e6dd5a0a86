package arrows

import (
	"fmt"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strconv"
	"strings"
)

// Check holds every Go file below dir, tests apart, to the two tables and
// returns one message a fault, in the order of the files. Tests may import what
// they like: they prove packages together.
func Check(dir string) ([]string, error) {
	own, err := parse(ours)
	if err == nil {
		err = own.closed()
	}
	if err != nil {
		return nil, fmt.Errorf("table of our packages: %w", err)
	}
	foreign, err := parse(theirs)
	if err != nil {
		return nil, fmt.Errorf("table of others' modules: %w", err)
	}
	module, err := modulePath(dir)
	if err != nil {
		return nil, err
	}
	c := checker{own: own, foreign: foreign, module: module, unknown: map[string]bool{}}
	err = filepath.WalkDir(dir, func(file string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir():
			if file != dir && outside(file, d.Name()) {
				return filepath.SkipDir
			}
			return nil
		case !strings.HasSuffix(file, ".go") || strings.HasSuffix(file, "_test.go"):
			return nil
		}
		rel, err := filepath.Rel(dir, file)
		if err != nil {
			return err
		}
		return c.file(file, filepath.ToSlash(rel))
	})
	return c.faults, err
}

// outside says whether a folder is no part of the module: what the go command
// skips, and modules within the module.
func outside(dir, name string) bool {
	if name == "testdata" || name == "node_modules" || strings.HasPrefix(name, ".") || strings.HasPrefix(name, "_") {
		return true
	}
	_, err := os.Stat(filepath.Join(dir, "go.mod"))
	return err == nil
}

type checker struct {
	own, foreign table
	module       string
	unknown      map[string]bool // packages already reported as having no line
	faults       []string
}

// file checks one file; rel is its path from the top of the module.
func (c *checker) file(name, rel string) error {
	set := token.NewFileSet()
	f, err := parser.ParseFile(set, name, nil, parser.ImportsOnly)
	if err != nil {
		return err
	}
	report := func(at token.Pos, format string, args ...any) {
		where := fmt.Sprintf("%s:%d: ", rel, set.Position(at).Line)
		c.faults = append(c.faults, where+fmt.Sprintf(format, args...))
	}
	pkg := path.Dir(rel)
	if pkg == "." {
		pkg = root
	}
	arrow, known := c.own.find(pkg)
	if !known && !c.unknown[pkg] {
		c.unknown[pkg] = true
		report(f.Package, "%s has no line in the table of arrows", pkg)
	}
	modules, limited := c.foreign.find(pkg)
	for _, spec := range f.Imports {
		imported, err := strconv.Unquote(spec.Path.Value)
		if err != nil {
			return err
		}
		if target, ok := c.ourName(imported); ok {
			if known && !arrow.allows(target) {
				report(spec.Pos(), "%s may not import %s (allowed: %s)", pkg, target, arrow.allowed())
			}
		} else if limited && !standard(imported) && !modules.allowsModule(imported) {
			report(spec.Pos(), "%s may not import %s (allowed: %s)", pkg, imported, modules.allowed())
		}
	}
	return nil
}

// ourName gives the name in the table of an import path within the module.
func (c *checker) ourName(path string) (string, bool) {
	if path == c.module {
		return root, true
	}
	return strings.CutPrefix(path, c.module+"/")
}

// standard says whether an import path is the standard library's: only a path
// that begins with a host has a dot in its first part.
func standard(path string) bool {
	first, _, _ := strings.Cut(path, "/")
	return !strings.Contains(first, ".")
}
