package arrows

import (
	"strings"
	"testing"
)

func mustParse(t *testing.T, text string) table {
	t.Helper()
	tab, err := parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return tab
}

func TestParseRefuses(t *testing.T) {
	for text, want := range map[string]string{
		"work quantity":        "write one name",
		"work cite -> a":       "write one name",
		"-> a":                 "write one name",
		"work -> a\nwork -> b": "has a line already",
	} {
		if _, err := parse(text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: got %v, want an error with %q", text, err, want)
		}
	}
}

func TestMisspeltArrowIsRefused(t *testing.T) {
	if err := mustParse(t, "quantity ->\nwork -> quantiy").closed(); err == nil {
		t.Error("quantiy has no line and passed")
	}
	if err := mustParse(t, "calc/* ->\nrules -> calc/* anything").closed(); err != nil {
		t.Error(err)
	}
}

func TestNearestLineCounts(t *testing.T) {
	tab := mustParse(t, "calc/* ->\ncalc/numeric ->\ncalc/water/* ->")
	for pkg, want := range map[string]string{
		"calc/numeric":   "calc/numeric",
		"calc/pack":      "calc/*",
		"calc/water/gab": "calc/water/*",
		"calc":           "",
		"calculator":     "",
	} {
		if l, _ := tab.find(pkg); l.from != want {
			t.Errorf("%s: got line %q, want %q", pkg, l.from, want)
		}
	}
}
