package main

import (
	"os/exec"
	"strings"
	"testing"
)

// The scripts name every command, flag and name, and the shell takes them.
func TestCompletion(t *testing.T) {
	for _, shell := range []string{"bash", "zsh", "fish"} {
		r := started(t, "", "completion", shell)
		for _, want := range []string{"assess", "temperature", "water.gab", "W01", "yaml"} {
			if shell == "fish" && want == "yaml" {
				continue // fish completes files by itself
			}
			if !strings.Contains(r.out, want) {
				t.Errorf("%s: no %s", shell, want)
			}
		}
		path, err := exec.LookPath(shell)
		if err != nil {
			t.Logf("%s is not here; its script was not run", shell)
			continue
		}
		cmd := exec.Command(path, "-n")
		cmd.Stdin = strings.NewReader(r.out)
		if out, err := cmd.CombinedOutput(); err != nil {
			t.Errorf("%s does not take its script: %v %s", shell, err, out)
		}
	}
}

// What bash offers is what the command line takes.
func TestBashOffersCommands(t *testing.T) {
	bash, err := exec.LookPath("bash")
	if err != nil {
		t.Skip("no bash here")
	}
	script := started(t, "", "completion", "bash").out + `
COMP_WORDS=(levigate expl); COMP_CWORD=1; _levigate; echo "${COMPREPLY[*]}"
COMP_WORDS=(levigate calc water.g); COMP_CWORD=2; _levigate; echo "${COMPREPLY[*]}"
COMP_WORDS=(levigate assess --for); COMP_CWORD=2; _levigate; echo "${COMPREPLY[*]}"
`
	cmd := exec.Command(bash, "--norc")
	cmd.Stdin = strings.NewReader(script)
	out, err := cmd.CombinedOutput()
	if want := "explain\nwater.gab\n--format\n"; err != nil || string(out) != want {
		t.Errorf("got %q, %v; want %q", out, err, want)
	}
}
