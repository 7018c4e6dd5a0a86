package main

import (
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"levigate/rules"
	"levigate/tools/newrule/skeleton"
	"levigate/work"
)

func TestPagesAreTheSameTwice(t *testing.T) {
	again := pages()
	for i, p := range pages() {
		if p.text != again[i].text {
			t.Errorf("%s comes out differently twice", p.name)
		}
		if strings.Contains(p.text, "%!") {
			t.Errorf("%s holds a format that went wrong", p.name)
		}
	}
}

func TestEveryDeclarationIsOnItsPage(t *testing.T) {
	text := map[string]string{}
	for _, p := range pages() {
		text[p.name] = p.text
	}
	for _, r := range rules.All() {
		if !strings.Contains(text["rules.md"], "## "+r.ID+" ") || !strings.Contains(text["messages.md"], "## "+r.ID+" ") {
			t.Errorf("%s is missing from a page", r.ID)
		}
	}
	for _, m := range work.Methods() {
		if !strings.Contains(text["methods.md"], "### "+m.ID+"\n") {
			t.Errorf("%s is missing from the methods", m.ID)
		}
	}
}

func TestPagesPromiseNothing(t *testing.T) {
	for _, p := range pages() {
		for _, word := range rules.NeverSaid(p.text) {
			t.Errorf("docs/%s says %q", p.name, word)
		}
	}
}

func TestCheckNamesWhatDiffers(t *testing.T) {
	dir := t.TempDir()
	ours := []page{{"a.md", "one\n"}, {"b.md", "two\n"}, {"c.md", "three\n"}}
	if err := write(dir, ours); err != nil {
		t.Fatal(err)
	}
	if differ, err := differing(dir, ours); err != nil || len(differ) > 0 {
		t.Fatalf("just written, and %v differ (%v)", differ, err)
	}
	for name, text := range map[string]string{"a.md": "one\r\n", "b.md": "two, by hand\n"} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Remove(filepath.Join(dir, "c.md")); err != nil {
		t.Fatal(err)
	}
	differ, err := differing(dir, ours)
	if got := strings.Join(differ, " "); err != nil || got != "b.md c.md" {
		t.Errorf("%q differ (%v), want b.md c.md", got, err)
	}
}

// A package that declares methods or checks and is not in this program would be
// missing from the pages without a word.
func TestEveryPackageThatDeclaresIsHere(t *testing.T) {
	root, err := skeleton.Root()
	if err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("go", "list", "-deps", "levigate/tools/gendocs").Output()
	if err != nil {
		t.Fatal(err)
	}
	here := map[string]bool{}
	for _, pkg := range strings.Fields(string(out)) {
		here[pkg] = true
	}
	for pkg, file := range declaring(t, root) {
		if !here[pkg] {
			t.Errorf("%s declares methods (%s) and is not imported: add it to register.go", pkg, file)
		}
	}
}

func TestTheGuardSeesADeclaration(t *testing.T) {
	dir := t.TempDir()
	if err := os.MkdirAll(filepath.Join(dir, "calc/pack"), 0o755); err != nil {
		t.Fatal(err)
	}
	text := "package pack\n\nvar Wall = work.Register(&work.Method{})\n"
	if err := os.WriteFile(filepath.Join(dir, "calc/pack/wall.go"), []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	if got := declaring(t, dir); got["levigate/calc/pack"] == "" {
		t.Errorf("a package that declares a method is not seen: %v", got)
	}
}

// declaring finds the packages whose code registers methods or proves them,
// with one file of each.
func declaring(t *testing.T, root string) map[string]string {
	t.Helper()
	out := map[string]string{}
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		name := d.Name()
		if d.IsDir() {
			if name == "testdata" || name == "node_modules" || name == "tools" || strings.HasPrefix(name, ".") && path != root {
				return filepath.SkipDir
			}
			return nil
		}
		if !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			return nil
		}
		text, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		if strings.Contains(string(text), "work.Register(") || strings.Contains(string(text), "work.Prove(") {
			rel, err := filepath.Rel(root, path)
			if err != nil {
				return err
			}
			out["levigate/"+filepath.ToSlash(filepath.Dir(rel))] = filepath.ToSlash(rel)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func TestShownStopsAtTheTolerance(t *testing.T) {
	for _, c := range []struct {
		v, tolerance float64
		want         string
	}{
		{0.30281, 0.02, "0.303"}, {3e-17, 1e-12, "0"}, {-1e-14, 1e-12, "0"}, {0.06, 1e-12, "0.06"}, {13.5, 0, "13.5"},
		{1.2345678, 1e-6, "1.23457"}, {120, 5, "120"}, {100000, 1, "100000"},
	} {
		if got := shown(c.v, c.tolerance); got != c.want {
			t.Errorf("%g ± %g: %s, want %s", c.v, c.tolerance, got, c.want)
		}
	}
}

func TestInlineIsNotReadAsMarkdown(t *testing.T) {
	s := newSheet("T")
	s.table([]string{"a"}, [][]string{{"x|y *z* <b>\nnext"}})
	if want := "| x\\|y \\*z\\* &lt;b&gt; next |\n"; !strings.HasSuffix(s.String(), want) {
		t.Errorf("%q does not end in %q", s.String(), want)
	}
}
