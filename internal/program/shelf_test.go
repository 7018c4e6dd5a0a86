package program

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"levigate"
	"levigate/examples"
	"levigate/refdata"
)

// A row nobody would look up counts for nothing: every raw material stands in
// an example, or a rule has something to ask of it, or a sourced table knows
// what is in it.
func TestEveryRawMaterialIsReached(t *testing.T) {
	used, words := inExamples(t), inRules(t)
	reached := map[string]int{}
	for _, m := range refdata.Materials() {
		how := reach(m, used, words)
		if how == "" {
			t.Errorf("%s, %s: no example, no rule and no table reaches it", m.Code, m.Name)
		}
		reached[how]++
	}
	t.Logf("%d raw materials, %d substances; reached by %v", len(refdata.Materials()), len(refdata.Entries()), reached)
}

func TestAnUnreachedRawMaterialIsSeen(t *testing.T) {
	m := &levigate.Material{Code: "ZZZ-99", Name: "Ash of nothing", Declared: []levigate.Share{{Substance: &levigate.Substance{INCI: "Nihil"}}}}
	if how := reach(m, inExamples(t), inRules(t)); how != "" {
		t.Errorf("reached by %s", how)
	}
}

// reach says by what a raw material is reached; empty when by nothing.
func reach(m *levigate.Material, used, words map[string]bool) string {
	if used[m.Code] {
		return "an example"
	}
	for _, c := range append(classesOf(m), append(m.Role, m.Cautions...)...) {
		if words[c] {
			return "a rule"
		}
	}
	for _, s := range m.Declared {
		x := s.Substance
		if words[x.INCI] {
			return "a rule"
		}
		if x.Isotherm != nil || len(x.HLB) > 0 || len(x.RequiredHLB) > 0 || len(x.Solubility) > 0 {
			return "a sourced table"
		}
	}
	return ""
}

// inExamples lists the codes of the raw materials the examples use.
func inExamples(t *testing.T) map[string]bool {
	t.Helper()
	out := map[string]bool{}
	names, err := fs.Glob(examples.Files, "*"+suffix)
	if err != nil {
		t.Fatal(err)
	}
	p := New()
	for _, name := range names {
		data, err := fs.ReadFile(examples.Files, name)
		if err != nil {
			t.Fatal(err)
		}
		f, problems := p.load(File{Name: name, Data: data})
		if f == nil {
			t.Fatal(name, problems)
		}
		for i := range f.Lines {
			if m := f.Lines[i].Match.Material; m != nil {
				out[m.Code] = true
			}
		}
	}
	return out
}

// inRules lists what rules look for: the classes, roles and cautions written
// in their code, the pairs, and the substances that have a limit.
func inRules(t *testing.T) map[string]bool {
	t.Helper()
	out := map[string]bool{}
	files, err := filepath.Glob(filepath.Join("..", "..", "rules", "*.go"))
	if err != nil || len(files) == 0 {
		t.Fatal("the rules are not where they were: ", err)
	}
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		// Examples name classes too; only what a check asks for counts.
		ast.Inspect(file, func(n ast.Node) bool {
			if kv, ok := n.(*ast.KeyValueExpr); ok {
				if key, ok := kv.Key.(*ast.Ident); ok && key.Name == "Examples" {
					return false
				}
			}
			if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING {
				if text, err := strconv.Unquote(lit.Value); err == nil && !strings.Contains(text, " ") {
					out[text] = true
				}
			}
			return true
		})
	}
	for _, p := range append(refdata.Pairs(), refdata.Clashes()...) {
		out[p.A], out[p.B] = true, true
	}
	for _, row := range refdata.PreservativeLimits() {
		for _, s := range row.Substances {
			out[s.INCI] = true
		}
	}
	return out
}
