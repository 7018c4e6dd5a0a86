package arrows

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

var (
	// landmark is a file in a folder, and the names of it that follow.
	landmark = regexp.MustCompile("`([\\w.-]+(?:/[\\w.-]+)+\\.(?:go|tsx?))`((?:,? `[A-Za-z]\\w*`)*)")
	named    = regexp.MustCompile("`([A-Za-z]\\w*)`")
)

// lost gives the files and names that a page sends its reader to and that are
// not there.
func lost(dir, page string) (out []string, seen int) {
	for _, m := range landmark.FindAllStringSubmatch(page, -1) {
		seen++
		source, err := os.ReadFile(filepath.Join(dir, filepath.FromSlash(m[1])))
		if err != nil {
			out = append(out, m[1]+" is not there")
			continue
		}
		for _, n := range named.FindAllStringSubmatch(m[2], -1) {
			// As Go, TypeScript and a TypeScript class or object declare a name.
			declared := regexp.MustCompile(`(?m)^\s*(?:(?:func (?:\([^)]*\) )?|type |export |private |async |function |class |const )+` +
				n[1] + `\b|` + n[1] + `(?:: |\([^()]*(?:\([^()]*\))?[^()]*\)[^;\n]*\{$))`)
			if !declared.Match(source) {
				out = append(out, fmt.Sprintf("%s declares no %s", m[1], n[1]))
			}
		}
	}
	return out, seen
}

func TestArchitectureSendsNobodyAstray(t *testing.T) {
	page, err := os.ReadFile("../../ARCHITECTURE.md")
	if err != nil {
		t.Fatal(err)
	}
	faults, seen := lost("../..", string(page))
	for _, f := range faults {
		t.Errorf("ARCHITECTURE.md: %s", f)
	}
	if seen < 20 {
		t.Errorf("only %d files are named: the page is written in another way than this test reads it", seen)
	}
}

// A test that finds nothing proves nothing until it has found something.
func TestLostLandmarksAreFound(t *testing.T) {
	page := "`calc/water/gab.go` `GAB`, `gabSlope`, `gone` and `calc/water/none.go` `x`; `ui/bench/src/grid/session.ts` `deliver`, `waits`, `answer`"
	got, seen := lost("../..", page)
	want := []string{"calc/water/gab.go declares no gone", "calc/water/none.go is not there", "ui/bench/src/grid/session.ts declares no answer"}
	if !slices.Equal(got, want) || seen != 3 {
		t.Errorf("%d seen; got\n%s\nwant\n%s", seen, strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}
