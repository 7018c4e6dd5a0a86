package main

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"levigate/tools/newrule/skeleton"
)

// The skeleton is compiled into the real package, without leaving a trace in
// the tree, and the package's own test must reject it.
func TestTheSkeletonCompilesAndFailsItsTest(t *testing.T) {
	root, err := skeleton.Root()
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	var out, log bytes.Buffer
	if code := run(dir, []string{"s98", "not-filled-in"}, &out, &log); code != 0 {
		t.Fatalf("exit %d: %s", code, &log)
	}
	const path = "rules/s98_not_filled_in.go"
	overlay, err := json.Marshal(map[string]map[string]string{"Replace": {filepath.Join(root, path): filepath.Join(dir, path)}})
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(dir, "overlay.json")
	if err := os.WriteFile(file, overlay, 0o644); err != nil {
		t.Fatal(err)
	}
	said, err := exec.Command("go", "test", "-overlay", file, "-run", "TestEveryRule/S98", "levigate/rules").CombinedOutput()
	if err == nil {
		t.Fatal("a skeleton that nobody filled in passes")
	}
	for _, want := range []string{"FAIL: TestEveryRule/S98", "a title, a why", "a source is needed", "one example that speaks", "no example says message seen"} {
		if !strings.Contains(string(said), want) {
			t.Errorf("the test does not say %q:\n%s", want, said)
		}
	}
}

func TestWhatIsRefused(t *testing.T) {
	dir := t.TempDir()
	for _, c := range []struct {
		args string
		code int
		want string
	}{
		{"", 2, "usage"}, {"W98", 2, "usage"}, {"X98 name", 1, "is no number"}, {"W9 name", 1, "is no number"},
		{"W98 Name", 1, "is no name"}, {"W98 a--b", 1, "is no name"}, {"C01 name", 1, "C01 is taken"},
		{"W98 dust", 1, "dust is taken"}, {"W98 a-test", 1, "would be a test"}, {"W98 for-windows", 1, "one system only"},
	} {
		var out, log bytes.Buffer
		if code := run(dir, strings.Fields(c.args), &out, &log); code != c.code || !strings.Contains(log.String(), c.want) {
			t.Errorf("%q: exit %d, %s", c.args, code, &log)
		}
	}
	var out, log bytes.Buffer
	if code := run(dir, []string{"W98", "twice"}, &out, &log); code != 0 {
		t.Fatal(log.String())
	}
	if code := run(dir, []string{"W98", "twice"}, &out, &log); code != 1 || !strings.Contains(log.String(), "is there already") {
		t.Errorf("written twice: exit %d, %s", code, &log)
	}
}
