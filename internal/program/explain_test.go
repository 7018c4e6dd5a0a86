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

// A raw material is found by its code, its name or a part of it, a substance by
// any of its names; each field says how it is known.
func TestTheShelfIsExplained(t *testing.T) {
	p := New()
	for name, want := range map[string]string{
		"glY-99": "raw material GLY-99", "honey, runny": "raw material HON-RU", "glycerol": "substance Glycerin", "Honey": "raw material HON-RU",
	} {
		x, err := p.Explain(name)
		if err != nil || x.Kind+" "+x.ID != want {
			t.Errorf("%s: got %+v %v, want %s", name, x, err, want)
		}
	}
	x, err := p.Explain("GLY-99")
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range x.Sections[1].Table.Rows {
		if row[0] == "water as delivered, g per 100 g" {
			if row[1] != "0.5 (0.2–2)" || row[2] != "from memory" {
				t.Errorf("water reads %q", row)
			}
			return
		}
	}
	t.Error("no water is told")
}

func TestExplainPointsAtTheShelf(t *testing.T) {
	_, err := New().Explain("glycerin vegetable")
	if help := helpOf(err); !strings.Contains(help, "on the shelf: Glycerin, vegetable, 99.5 %") {
		t.Errorf("help is %q", help)
	}
}
