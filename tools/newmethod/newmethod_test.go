package main

import (
	"bytes"
	"encoding/json"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"levigate/tools/newrule/skeleton"
)

// Each skeleton is compiled as a package of the module, without leaving a trace
// in the tree, and the harness must reject it.
func TestTheSkeletonsCompileAndFailTheirTest(t *testing.T) {
	for name, args := range map[string][]string{
		"equation":  {"notopic", "dry-life"},
		"procedure": {"-procedure", "notopic", "dry-life"},
	} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			var out, log bytes.Buffer
			if code := run(dir, args, &out, &log); code != 0 {
				t.Fatalf("exit %d: %s", code, &log)
			}
			// The folder is not there, so the test is built first and run elsewhere.
			binary := filepath.Join(t.TempDir(), "notopic.test")
			build := exec.Command("go", "test", "-c", "-vet=off", "-overlay", overlay(t, dir), "-o", binary, "levigate/calc/notopic")
			if said, err := build.CombinedOutput(); err != nil {
				t.Fatalf("it does not compile: %s", said)
			}
			said, err := exec.Command(binary).CombinedOutput()
			if err == nil {
				t.Fatal("a skeleton that nobody filled in passes")
			}
			for _, want := range []string{"FAIL: TestMethods/notopic.dry-life", "a title, a text", "an accuracy is needed", "a source is needed", "no check that our own output did not make"} {
				if !strings.Contains(string(said), want) {
					t.Errorf("the test does not say %q:\n%s", want, said)
				}
			}
		})
	}
}

// overlay lays what was written under dir over the module.
func overlay(t *testing.T, dir string) string {
	t.Helper()
	root, err := skeleton.Root()
	if err != nil {
		t.Fatal(err)
	}
	replace := map[string]string{}
	err = filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		rel, err := filepath.Rel(dir, path)
		replace[filepath.Join(root, rel)] = path
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(map[string]map[string]string{"Replace": replace})
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "overlay.json")
	if err := os.WriteFile(file, text, 0o644); err != nil {
		t.Fatal(err)
	}
	return file
}

func TestATopicThatIsThereGetsOneFile(t *testing.T) {
	root, err := skeleton.Root()
	if err != nil {
		t.Fatal(err)
	}
	files, err := method(root, "water", "osmotic", false)
	if err != nil || len(files) != 1 || files[0].Path != "calc/water/osmotic.go" {
		t.Errorf("%v, %v", files, err)
	}
}

func TestWhatIsRefused(t *testing.T) {
	dir := t.TempDir()
	for _, c := range []struct {
		args string
		code int
		want string
	}{
		{"", 2, "usage"}, {"water", 2, "usage"}, {"-recipe water a", 2, "usage"}, {"Water a", 1, "is no topic"}, {"func a", 1, "is no topic"},
		{"water A", 1, "is no name"}, {"water 3d", 1, "is no name"}, {"water a-test", 1, "would be a test"}, {"water drift-linux", 1, "one system only"},
	} {
		var out, log bytes.Buffer
		if code := run(dir, strings.Fields(c.args), &out, &log); code != c.code || !strings.Contains(log.String(), c.want) {
			t.Errorf("%q: exit %d, %s", c.args, code, &log)
		}
	}
}
