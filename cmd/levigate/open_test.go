package main

import (
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// The token reaches the browser in a file of its owner's, not in the words a
// program is started with.
func TestTheLeadIsPrivate(t *testing.T) {
	file := filepath.Join(t.TempDir(), "levigate.html")
	const url = "http://127.0.0.1:7420/?token=abc-123"
	if err := writeLead(file, url); err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(file)
	if err != nil || !strings.Contains(string(text), `content="0; url=`+url+`"`) {
		t.Errorf("%v %s", err, text)
	}
	if info, err := os.Stat(file); runtime.GOOS != "windows" && (err != nil || info.Mode().Perm() != 0o600) {
		t.Errorf("%v %v", err, info.Mode())
	}
	if writeLead(file, url) == nil {
		t.Error("a file that is there was written over")
	}
}
