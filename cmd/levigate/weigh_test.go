package main

import (
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"levigate/quantity"
	"levigate/rules"
)

const bench = "0.01 g,2000 g,s=0.01 g"

// The list a person reads, whole. Pinned; its grams were compared by hand with
// those worked out for the walnut polish. LEVIGATE_UPDATE=1 rewrites it.
func TestWeighGolden(t *testing.T) {
	for name, batch := range map[string]string{"weigh-HP-01-500": "500g", "weigh-HP-01-100": "100 g"} {
		r := started(t, "", "weigh", example("HP-01"), "--batch", batch, "--balance", bench)
		path := "testdata/" + name + ".txt"
		if os.Getenv("LEVIGATE_UPDATE") != "" {
			if err := os.WriteFile(path, []byte(r.out), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if r.out != string(want) {
			t.Errorf("%s differs:\n%s", path, r.out)
		}
	}
}

func TestWeighExitStatus(t *testing.T) {
	hp := example("HP-01")
	short := write(t, "short.formula.yaml", strings.Replace(tea, "qs: true", "percent: 50", 1))
	bare := write(t, "bare.formula.yaml", tea)
	broken := write(t, "broken.formula.yaml", "levigate: formula/1\ncode: [")
	for name, c := range map[string]struct {
		args []string
		want int
		says string
	}{
		"own batch":            {[]string{hp}, 0, "weighing list for 500 g"},
		"lines too little":     {[]string{hp, "--batch=10g"}, 0, "under 1 g"},
		"two balances":         {[]string{hp, "--balance", bench, "--balance", "0.1 mg,220 g,name=Fine"}, 0, "Fine"},
		"no s":                 {[]string{hp, "--balance", "0.01 g,2 kg"}, 0, "No repeatability is stated"},
		"tolerance with sign":  {[]string{hp, "--tolerance", "1 %"}, 0, "to within 1 %"},
		"comes to 90":          {[]string{short, "--batch=1kg"}, 2, "90 %, not 100"},
		"no batch":             {[]string{bare}, 2, "names no batch"},
		"batch without unit":   {[]string{hp, "--batch=500"}, 2, "no unit"},
		"batch of nothing":     {[]string{hp, "--batch=0 g"}, 2, "the batch is 0 g"},
		"balance of nothing":   {[]string{hp, "--balance", "0 g,1 g"}, 2, "steps of nothing"},
		"balance half written": {[]string{hp, "--balance", "0.01 g"}, 2, "names no capacity"},
		"tolerance of nothing": {[]string{hp, "--tolerance=0"}, 2, "the tolerance is 0 %"},
		"tolerance in words":   {[]string{hp, "--tolerance=tight"}, 2, "tolerance"},
		"no such file":         {[]string{"nowhere"}, 2, "does not exist"},
		"broken file":          {[]string{broken}, 2, "broken.formula.yaml:"},
		"broken file, JSON":    {[]string{broken, "--format=json"}, 2, "levigate/error/1"},
		"help":                 {[]string{"--help"}, 0, "Exit status"},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			r := started(t, "", append([]string{"weigh"}, c.args...)...)
			if r.status != c.want || !strings.Contains(r.out+r.err, c.says) {
				t.Errorf("status %d, want %d; out %.300q err %q", r.status, c.want, r.out, r.err)
			}
			if c.want == 2 && !strings.Contains(r.out+r.err, "help") {
				t.Errorf("no help in %q", r.err)
			}
		})
	}
}

func TestWeighJSON(t *testing.T) {
	var list struct {
		Schema string
		Batch  json.Number
		Lines  []struct {
			Line          int
			Grams         json.Number
			Can           string
			SmallestBatch *json.Number `json:"smallest-batch"`
			Premix        *struct{ In int }
			Absorbs       bool
			Notes         []string
		}
	}
	r := started(t, "", "weigh", example("HP-01"), "--batch=100g", "--format=json")
	if err := json.Unmarshal([]byte(r.out), &list); err != nil || list.Schema != "levigate/weighing/1" || len(list.Lines) != 10 {
		t.Fatalf("%v %.300s", err, r.out)
	}
	var sum quantity.Decimal
	for _, l := range list.Lines {
		sum = sum.Add(quantity.MustDecimal(l.Grams.String()))
		if little := l.Line == 6 || l.Line == 10; little != (l.Can == "below-minimum") || little != (l.SmallestBatch != nil) || little != (l.Premix != nil) || l.Absorbs != (l.Line == 4) || l.Notes == nil {
			t.Errorf("%+v", l)
		}
	}
	if sum.String() != "100" || list.Batch != "100" {
		t.Errorf("the lines come to %s, the batch is %s", sum, list.Batch)
	}
}

// A name that a spreadsheet would run stands as text.
func TestWeighCSV(t *testing.T) {
	file := write(t, "evil.formula.yaml", `levigate: formula/1
code: E-1
name: Evil
product: bath
lines:
  - {phase: A, material: "=1+1", percent: 40}
  - {phase: A, material: "@home", percent: 10}
  - {phase: A, material: Aqua, qs: true}
materials:
  - {name: "=1+1", composition: [{inci: Glycerin, percent: 100}]}
  - {name: "@home", composition: [{inci: Glycerin, percent: 100}]}
`)
	r := started(t, "", "weigh", file, "--batch=1 kg", "--format=csv")
	rows, err := csv.NewReader(strings.NewReader(r.out)).ReadAll()
	if err != nil || len(rows) != 4 || rows[1][3] != "'=1+1" || rows[2][3] != "'@home" || rows[1][5] != "400" {
		t.Errorf("%v %q %s", err, rows, r.err)
	}
}

// No list, however odd its balances, promises what only a laboratory or the law
// can, or is wider than a page.
func TestWeighWordsAndWidth(t *testing.T) {
	for _, code := range []string{"HP-01", "CM-03", "BL-02", "CB-01", "NG-09"} {
		for _, args := range [][]string{{"--batch=30g"}, {"--batch=20kg", "--balance=1 g,6 kg,tare=800 g"}, {"--batch=300g", "--balance=5 g,30 kg", "--balance=0.1 mg,220 g,s=0.1 mg,name=The old one in the corner by the window"}} {
			r := started(t, "", append([]string{"weigh", example(code)}, args...)...)
			if said := rules.NeverSaid(r.out); r.status != 0 || len(said) > 0 {
				t.Errorf("%s %v: status %d, says %v %s", code, args, r.status, said, r.err)
			}
			for _, line := range strings.Split(r.out, "\n") {
				if len([]rune(line)) > width {
					t.Errorf("%s %v: too wide: %s", code, args, line)
				}
			}
		}
	}
}

// A paper is written whole under its name, or nothing is.
func TestWeighPDF(t *testing.T) {
	folder := t.TempDir()
	hp, out := example("HP-01"), filepath.Join(folder, "hp.pdf")
	if r := started(t, "", "weigh", hp, "--format=pdf", "--out", out, "--paper=letter"); r.status != 0 || r.out != "" {
		t.Fatalf("%+v", r)
	}
	b, err := os.ReadFile(out)
	if err != nil || !strings.HasPrefix(string(b), "%PDF-") || !strings.HasSuffix(strings.TrimSpace(string(b)), "%%EOF") {
		t.Fatalf("%v %.40q", err, b)
	}
	if r := started(t, "", "weigh", hp, "--format=pdf"); r.status != 0 || !strings.HasPrefix(r.out, "%PDF-") {
		t.Errorf("to the standard output: %d %s", r.status, r.err)
	}
	csvFile := filepath.Join(folder, "hp.csv")
	if r := started(t, "", "weigh", hp, "--format=csv", "--out", csvFile); r.status != 0 || r.out != "" {
		t.Errorf("csv: %+v", r)
	}
	broken := write(t, "broken.formula.yaml", "levigate: formula/1\ncode: [")
	own := write(t, "own.formula.yaml", tea)
	for name, c := range map[string]struct {
		args []string
		says string
	}{
		"broken file":     {[]string{broken, "--format=pdf", "--out", out}, "broken.formula.yaml:"},
		"no folder":       {[]string{hp, "--format=pdf", "--out", filepath.Join(folder, "none", "x.pdf")}, "its folder"},
		"a folder":        {[]string{hp, "--format=pdf", "--out", folder}, "no ordinary file"},
		"named as a PDF":  {[]string{hp, "--out", filepath.Join(folder, "x.PDF")}, "the format is text"},
		"the formula":     {[]string{own, "--batch=100 g", "--out", own}, "the formula file itself"},
		"no such paper":   {[]string{hp, "--format=pdf", "--paper=foolscap", "--out", out}, "foolscap"},
		"no batch in PDF": {[]string{own, "--format=pdf", "--out", out}, "names no batch"},
	} {
		if r := started(t, "", append([]string{"weigh"}, c.args...)...); r.status != 2 || !strings.Contains(r.err, c.says) || !strings.Contains(r.err, "help") {
			t.Errorf("%s: status %d, %q", name, r.status, r.err)
		}
	}
	if after, _ := os.ReadFile(out); string(after) != string(b) {
		t.Error("a refused run changed the file that stood there")
	}
	left, err := os.ReadDir(folder)
	if err != nil || len(left) != 2 {
		t.Errorf("left behind: %v %v", left, err)
	}
}

// A device that is a terminal's kind gets no PDF.
func TestNoPDFForATerminal(t *testing.T) {
	device, err := os.OpenFile(os.DevNull, os.O_WRONLY, 0)
	if err != nil {
		t.Skip(err)
	}
	defer device.Close()
	if !terminal(device) {
		t.Skip("the null device is no character device here")
	}
	c := weighCommand{File: "x", Format: "pdf"}
	if err := c.outFits(device); err == nil || !strings.Contains(err.Error(), "no text for a terminal") {
		t.Error(err)
	}
	if c.Out = "x.pdf"; c.outFits(device) != nil {
		t.Error("a named file is refused")
	}
}

// What goes wrong while a file is made leaves the old one.
func TestWriteFileWholeOrNot(t *testing.T) {
	path := write(t, "list.csv", "old")
	fail := errors.New("half way")
	err := writeFile(path, func(out io.Writer) error { fmt.Fprint(out, "half"); return fail })
	if b, _ := os.ReadFile(path); !errors.Is(err, fail) || string(b) != "old" {
		t.Errorf("%v, %q", err, b)
	}
	if err := os.Chmod(path, 0o640); err != nil {
		t.Fatal(err)
	}
	err = writeFile(path, func(out io.Writer) error { fmt.Fprint(out, "new"); return nil })
	info, _ := os.Stat(path)
	if b, _ := os.ReadFile(path); err != nil || string(b) != "new" || info.Mode().Perm() != 0o640 {
		t.Errorf("%v, %q, %v", err, b, info.Mode())
	}
}

// Lines without a phase are summed under a name, not under nothing.
func TestWeighWithoutPhase(t *testing.T) {
	const text = "levigate: formula/1\ncode: PH\nname: Half named\nproduct: hand-wash\nlines:\n" +
		"  - {material: Glycerin, percent: 60}\n  - {phase: A, material: Purified water, qs: true}\n"
	if r := started(t, text, "weigh", "-", "--batch", "100g"); !strings.Contains(r.out, "By phase: no phase 60.00 g, A 40.00 g.") {
		t.Error(r.out, r.err)
	}
}
