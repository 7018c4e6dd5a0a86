package main

import (
	"bufio"
	"io"
	"net/http"
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"
)

// The program prints where it is, shows the folder it was given, and ends when
// interrupted.
func TestServe(t *testing.T) {
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	if err := os.WriteFile(folder+"/t.formula.yaml", []byte(tea), 0o644); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(self, "serve", "--addr", "127.0.0.1:0", "--dir", folder, "--workspace", t.TempDir())
	cmd.Env = append(os.Environ(), asked+"=1")
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	defer cmd.Process.Kill()
	line, err := bufio.NewReader(out).ReadString('\n')
	url, ok := strings.CutPrefix(strings.TrimSpace(line), "Levigate at ")
	if err != nil || !ok {
		t.Fatalf("said %q, %v", line, err)
	}
	url, token, _ := strings.Cut(url, "?token=")
	if res, err := http.Get(url + "formulas/t"); err != nil || res.StatusCode != 401 {
		t.Fatalf("without the token: %v, %v", res, err)
	}
	ask, err := http.NewRequest("GET", url+"formulas/t", nil)
	if err != nil {
		t.Fatal(err)
	}
	ask.Header.Set("Authorization", "Bearer "+token)
	res, err := http.DefaultClient.Do(ask)
	if err != nil {
		t.Fatal(err)
	}
	body, _ := io.ReadAll(res.Body)
	res.Body.Close()
	if res.StatusCode != 200 || !strings.Contains(string(body), "Tea") {
		t.Errorf("%d %.200s", res.StatusCode, body)
	}
	if err := cmd.Process.Signal(os.Interrupt); err != nil {
		t.Skip("no interrupt on this system")
	}
	ended := make(chan error, 1)
	go func() { ended <- cmd.Wait() }()
	select {
	case err := <-ended:
		if err != nil {
			t.Errorf("ended with %v", err)
		}
	case <-time.After(5 * time.Second):
		t.Error("it does not end on Ctrl-C")
	}
}
