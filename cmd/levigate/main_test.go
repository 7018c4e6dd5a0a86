package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// asked makes the test binary be the program itself, so that the tests meet
// what a shell meets: arguments, streams, exit status.
const asked = "LEVIGATE_TEST_IS_PROGRAM"

func TestMain(m *testing.M) {
	if os.Getenv(asked) != "" {
		main()
	}
	os.Exit(m.Run())
}

type result struct {
	status   int
	out, err string
}

func started(t *testing.T, stdin string, args ...string) result {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.CommandContext(context.Background(), self, args...)
	cmd.Env = append(os.Environ(), asked+"=1")
	cmd.Stdin = strings.NewReader(stdin)
	var out, errs bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &errs
	r := result{}
	if err := cmd.Run(); err != nil {
		exit, ok := errors.AsType[*exec.ExitError](err)
		if !ok {
			t.Fatal(err)
		}
		r.status = exit.ExitCode()
	}
	r.out, r.err = out.String(), errs.String()
	return r
}

func example(code string) string {
	return filepath.Join("..", "..", "examples", code+".formula.yaml")
}

// write puts a formula file into a folder of the test's own.
func write(t *testing.T, name, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

const tea = `levigate: formula/1
code: T-1
name: Tea
product: bath
lines:
  - {phase: A, material: Glycerin, percent: 40}
  - {phase: A, material: Aqua, qs: true}
`

func TestExitStatus(t *testing.T) {
	good, stop := example("HP-01"), example("NG-09")
	broken := write(t, "broken.formula.yaml", "levigate: formula/1\ncode: [")
	unknown := write(t, "unknown.formula.yaml", strings.Replace(tea, "Glycerin", "Moonlight", 1))
	for name, c := range map[string]struct {
		args []string
		want int
	}{
		"assessed":                   {[]string{"assess", good}, 0},
		"a broken stop rule":         {[]string{"assess", stop}, 1},
		"broken file":                {[]string{"assess", broken}, 2},
		"unknown raw material":       {[]string{"assess", unknown}, 2},
		"no such file":               {[]string{"assess", "nowhere.formula.yaml"}, 2},
		"a folder":                   {[]string{"assess", "."}, 2},
		"the highest wins":           {[]string{"assess", stop, good, broken}, 2},
		"the highest wins, first":    {[]string{"assess", broken, stop, "--format", "json"}, 2},
		"stop in JSON":               {[]string{"assess", stop, "--format=json"}, 1},
		"too hot":                    {[]string{"assess", good, "--temperature", "61"}, 2},
		"cold is allowed":            {[]string{"assess", good, "--temperature", "-15"}, 0},
		"Fahrenheit":                 {[]string{"assess", good, "--temperature=77F"}, 0},
		"no temperature":             {[]string{"assess", good, "--temperature", "mild"}, 2},
		"humid air":                  {[]string{"assess", good, "--humidity", "75%"}, 0},
		"no part":                    {[]string{"assess", good, "--parts", "watre"}, 2},
		"no format":                  {[]string{"assess", good, "--format", "xml"}, 2},
		"no file":                    {[]string{"assess"}, 2},
		"no command":                 {[]string{"asess"}, 2},
		"no flag":                    {[]string{"assess", good, "--frmat", "json"}, 2},
		"help":                       {[]string{"assess", "--help"}, 0},
		"nothing":                    {nil, 0},
		"version":                    {[]string{"--version"}, 0},
		"calc":                       {[]string{"calc", "water.gab", "m0=0.0355", "c=14.42", "k=0.814", "activity=0.575"}, 0},
		"calc out of range":          {[]string{"calc", "water.gab", "m0=7", "c=14.42", "k=0.814", "activity=0.575"}, 2},
		"calc a stranger":            {[]string{"calc", "water.gabb"}, 2},
		"calc a negative number":     {[]string{"calc", "water.flory-huggins", "phiW=0.5", "R=4", "chi=-1"}, 0},
		"explain":                    {[]string{"explain", "water.activity"}, 0},
		"explain a stranger":         {[]string{"explain", "fire.activity"}, 2},
		"serve to the world":         {[]string{"serve", "--addr", "0.0.0.0:0"}, 2},
		"serve a folder that is not": {[]string{"serve", "--dir", "nowhere", "--addr", "127.0.0.1:0"}, 2},
		"schema":                     {[]string{"schema"}, 0},
		"completion":                 {[]string{"completion", "fish"}, 0},
		"completion for no shell":    {[]string{"completion", "abacus"}, 2},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			r := started(t, "", c.args...)
			if r.status != c.want {
				t.Errorf("status %d, want %d; out %.200q err %q", r.status, c.want, r.out, r.err)
			}
			if c.want >= 2 && !strings.Contains(r.err+r.out, "help") {
				t.Errorf("no help in %q", r.err)
			}
		})
	}
}

// Each command's help lists the exit statuses.
func TestHelpListsExitStatuses(t *testing.T) {
	for _, c := range []string{"assess", "calc", "explain", "serve", "schema", "completion", "verify", "backup", "restore"} {
		if r := started(t, "", c, "--help"); !strings.Contains(strings.Join(strings.Fields(r.out), " "), "Exit status: 0 done; 1 something") {
			t.Errorf("%s --help: %s", c, r.out)
		}
	}
}

func TestUnreadableFileSaysWhereAndWhatToDo(t *testing.T) {
	path := write(t, "t.formula.yaml", strings.Replace(tea, "Glycerin", "Glyzerin", 1))
	r := started(t, "", "assess", path)
	lines := strings.Split(r.err, "\n")
	if r.out != "" || len(lines) < 2 || !strings.HasPrefix(lines[0], path+":6:") || !strings.HasPrefix(lines[1], "  help: ") {
		t.Errorf("out %q, err %q", r.out, r.err)
	}
	gone := started(t, "", "assess", "nowhere.formula.yaml")
	if !strings.HasPrefix(gone.err, "nowhere.formula.yaml:1:1: does not exist\n  help: ") {
		t.Errorf("err %q", gone.err)
	}
}

// One file is an object, several are an array in the order given, and what
// could not be read takes its place.
func TestJSONShape(t *testing.T) {
	var one map[string]any
	r := started(t, tea, "assess", "-", "--format", "json")
	if err := json.Unmarshal([]byte(r.out), &one); err != nil || one["schema"] != "levigate/assessment/1" || one["file"] != "-" {
		t.Fatalf("%v %.300s %s", err, r.out, r.err)
	}
	if curves := one["curves"].([]any); len(curves) == 0 {
		t.Error("JSON has the curves without being asked")
	}
	var all []map[string]any
	r = started(t, "", "assess", example("HP-01"), "nowhere", example("CB-01"), "--format", "json")
	if err := json.Unmarshal([]byte(r.out), &all); err != nil || len(all) != 3 {
		t.Fatalf("%v %.300s", err, r.out)
	}
	for i, want := range []string{"levigate/assessment/1", "levigate/error/1", "levigate/assessment/1"} {
		if all[i]["schema"] != want {
			t.Errorf("place %d: %v", i, all[i]["schema"])
		}
	}
	if r.err != "" {
		t.Errorf("in JSON a file's faults are in the JSON: %q", r.err)
	}
}

func TestPartsLeaveOutWhatWasNotAsked(t *testing.T) {
	var one struct {
		Figures []struct{ ID string }
		Curves  []any
	}
	r := started(t, "", "assess", example("HP-01"), "--format", "json", "--parts", "composition")
	if err := json.Unmarshal([]byte(r.out), &one); err != nil || len(one.Figures) != 1 || len(one.Curves) != 0 {
		t.Errorf("%v %+v", err, one)
	}
}

func TestCalcJSON(t *testing.T) {
	var figures []struct {
		ID      string
		Value   float64
		Unit    string
		Working any
	}
	r := started(t, "", "calc", "water.gab", "--format", "json", "m0=0.0355", "c=14.42", "k=0.814", "activity=0.575")
	if err := json.Unmarshal([]byte(r.out), &figures); err != nil || len(figures) != 1 || figures[0].Unit != "g/g" || figures[0].Working != nil {
		t.Fatalf("%v %s", err, r.out)
	}
	r = started(t, "", "calc", "water.gab", "--format", "json", "--working", "m0=0.0355", "c=14.42", "k=0.814", "activity=0.575")
	if err := json.Unmarshal([]byte(r.out), &figures); err != nil || figures[0].Working == nil {
		t.Errorf("%v %s", err, r.out)
	}
}

// Colour is for terminals; a pipe gets none.
func TestNoColourInAPipe(t *testing.T) {
	if r := started(t, "", "assess", example("NG-09")); strings.Contains(r.out, "\x1b") || !strings.Contains(r.out, "■ stop M04:") {
		t.Errorf("%.300q", r.out)
	}
}

func TestTextFitsItsWidth(t *testing.T) {
	for _, code := range []string{"HP-01", "CM-03", "CB-01"} {
		r := started(t, "", "assess", example(code), "--curves")
		for _, line := range strings.Split(r.out, "\n") {
			if n := len([]rune(line)); n > width {
				t.Errorf("%s: %d columns: %s", code, n, line)
			}
		}
	}
}
