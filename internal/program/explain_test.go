package program

import (
	"strings"
	"testing"
)

// clashes lists names that stand for two things. A figure and the method that
// makes it may share theirs: explaining the one explains the other.
func clashes(all []entry) []string {
	seen := map[string]string{}
	var out []string
	for _, e := range all {
		key := strings.ToLower(e.id)
		if kind, twice := seen[key]; twice {
			out = append(out, e.id+" is a "+kind+" and a "+e.kind)
		}
		seen[key] = e.kind
	}
	return out
}

func TestNamesDoNotClash(t *testing.T) {
	all := New().entries()
	if len(all) < 80 {
		t.Errorf("only %d names", len(all))
	}
	for _, c := range clashes(all) {
		t.Error(c)
	}
}

func TestClashesAreCaught(t *testing.T) {
	bad := []entry{{kind: "rule", id: "W01"}, {kind: "table", id: "w01"}, {kind: "table", id: "growth"}}
	if got := clashes(bad); len(got) != 1 {
		t.Errorf("caught %v", got)
	}
}

// Every name can be explained, says something, and promises nothing.
func TestEverythingIsExplained(t *testing.T) {
	p := New()
	for _, e := range p.entries() {
		x, err := p.Explain(e.id)
		if err != nil {
			t.Errorf("%s: %v", e.id, err)
			continue
		}
		if x.Title == "" || len(x.Sections) == 0 {
			t.Errorf("%s: nothing is said", e.id)
		}
	}
}

func TestExplainNamesTheMethodOfAFigure(t *testing.T) {
	x, err := New().Explain("Water.Activity")
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range x.Sections {
		if s.Head == "Method" && strings.Contains(s.Text, "water.sum") {
			return
		}
	}
	t.Errorf("no method in %+v", x.Sections)
}

func TestExplainHelpsWithNearNames(t *testing.T) {
	for typed, want := range map[string]string{"water.gabb": "water.gab", "W1": "W01", "growth-limit": "growth-limits", "resreve": "water.reserve"} {
		_, err := New().Explain(typed)
		if help := helpOf(err); !strings.Contains(help, want) {
			t.Errorf("%s: help is %q, want %s in it", typed, help, want)
		}
	}
	if _, err := New().Explain("zzzzzzzz"); !strings.Contains(helpOf(err), "--list") {
		t.Error("a name near nothing should point at the list")
	}
}
