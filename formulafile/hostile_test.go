package formulafile

import (
	"fmt"
	"strings"
	"testing"

	"github.com/goccy/go-yaml/token"
)

// hostile are files made to cost time, memory or stack; each within MaxBytes
// where it can be.
func hostile() map[string]string {
	rep := strings.Repeat
	most := func(s string) string { return rep(s, MaxBytes/len(s)) }
	groups := func(n int) string {
		var b strings.Builder
		for i := range n {
			fmt.Fprintf(&b, "k%d:\n", i)
		}
		return b.String()
	}
	return map[string]string{
		"one byte too many":    rep("#", MaxBytes+1),
		"brackets":             most("["),
		"braces":               most("{a: "),
		"closing":              most("]"),
		"commas":               "a: [" + rep("x,", 7000),
		"dashes":               most("- "),
		"dashes down":          most("-\n"),
		"colons":               most("a: "),
		"keys":                 groups(MaxEntries + 1),
		"keys without value":   rep("a:\n b:\n", MaxMarks/4-1),
		"keys of keys":         nested(170),
		"words alone":          "a: {" + rep("x, ", 990) + "}",
		"quotes":               most("\""),
		"quoted":               rep("\"\",", 5000),
		"long quote":           "a: \"" + rep(rep("x", 15000)+"\n ", 60),
		"long block":           "a: |\n" + rep("  "+rep("x", 15000)+"\n", 60),
		"long plain":           "a: " + rep(rep("x ", 7000)+"\n  ", 60),
		"anchors":              rep("a: &a [*a,*a]\n", 3000),
		"documents":            rep("---\n", 7000),
		"ends":                 rep("...\n", 7000),
		"questions":            rep("? ", 7000),
		"spaces":               rep(rep(" ", 15000)+"\n", 60),
		"less than":            rep("<<"+rep(" ", 100), 900),
		"escapes":              "levigate: [" + rep(`"\x",`, 3000),
		"indent":               deepening(120),
		"zeros":                rep("\x00", MaxBytes),
		"tabs":                 rep("\t\n", 9000),
		"problems":             "levigate: formula/1\nlines:\n" + rep("- {x, y: [1], z: }\n", 900),
		"percent of a million": "levigate: formula/1\nlines: [{material: x, percent: " + rep("9", 15000) + "}]",
	}
}

// nested is n groups of n keys without a value: the parser moves all that
// follows each of them.
func nested(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "a%d:\n", i)
		b.WriteString(strings.Repeat(" b:\n", n))
	}
	return b.String()
}

func deepening(n int) string {
	var b strings.Builder
	for i := range n {
		b.WriteString(strings.Repeat(" ", i) + "a:\n")
	}
	return b.String()
}

func TestHostile(t *testing.T) {
	for name, text := range hostile() {
		f, problems := Read(name, []byte(text))
		if f != nil || len(problems) == 0 || len(problems) > MaxProblems+1 {
			t.Errorf("%s: %d problems", name, len(problems))
		}
		for _, p := range problems {
			if len(p.Text)+len(p.Help) > 600 {
				t.Errorf("%s: a message of %d bytes", name, len(p.Text)+len(p.Help))
				break
			}
		}
	}
}

// A file at every limit at once is read.
func TestLimits(t *testing.T) {
	var b strings.Builder
	b.WriteString("levigate: formula/1\ncode: " + strings.Repeat("c", MaxCode) + "\nname: " + strings.Repeat("é", MaxName) + "\nproduct: bath\nlines:\n")
	for range MaxLines {
		b.WriteString("  - {phase: A, material: x, percent: 0.5}\n")
	}
	b.WriteString("materials:\n")
	for i := range MaxMaterials {
		fmt.Fprintf(&b, "  - name: m%d\n    composition: [{inci: a, percent: 50}, {inci: b, percent: 50}]\n", i)
	}
	b.WriteString("  \n")
	text := strings.TrimSuffix(b.String(), "  \n")
	text += "making:\n" + strings.Repeat("  - {text: "+strings.Repeat("t", MaxText)+"}\n", MaxSteps)
	text += "notes: " + strings.Repeat("n", MaxNotes) + "\n"
	f := read(t, text)
	if len(f.Lines) != MaxLines || len(f.Materials) != MaxMaterials || len(f.Making) != MaxSteps {
		t.Errorf("%d lines, %d materials, %d steps", len(f.Lines), len(f.Materials), len(f.Making))
	}
	comesBack(t, f)
}

// A panic in the parser becomes a problem.
func TestParserPanic(t *testing.T) {
	r := &reader{}
	// No position: the parser looks at it without asking.
	if n := r.parse("odd.yaml", token.Tokens{{Type: token.StringType, Value: "a"}, {Type: token.MappingValueType, Value: ":"}}); n != nil || len(r.problems) != 1 {
		t.Fatalf("%v, %v", n, r.problems)
	}
	if got := Format(r.sorted(), "odd.yaml"); !strings.HasPrefix(got, "odd.yaml:1:1: the YAML reader gave up on odd.yaml (") {
		t.Error(got)
	}
}
