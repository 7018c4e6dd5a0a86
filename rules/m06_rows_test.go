package rules

import (
	"slices"
	"strings"
	"testing"

	"levigate"
	"levigate/cite"
	"levigate/quantity"
	"levigate/refdata"
)

// Every clash is run from its own columns: on and under its least share, the
// other way round in the sheet, and without a polar liquid.
func TestEveryClash(t *testing.T) {
	rule, _ := Find("M06")
	listed := map[string]bool{}
	for _, c := range refdata.Classes() {
		listed[c.Name] = true
	}
	keys := map[string]bool{}
	for _, p := range refdata.Clashes() {
		if keys[p.Key] || p.Least <= 0 {
			t.Errorf("%s stands twice or speaks of nothing", p.Key)
		}
		keys[p.Key] = true
		for _, kind := range []string{p.A, p.B} {
			if kind == strings.ToLower(kind) && !listed[kind] {
				t.Errorf("%s: %q is not on the list of classes", p.Key, kind)
			}
		}
		if p.Mark == cite.Read && slices.ContainsFunc(p.Sources, func(r cite.Ref) bool { return r.Key == "recalled" || r.Key == "trade-practice" }) {
			t.Errorf("%s is marked read and names no source that was", p.Key)
		}
		judge := func(percent float64, extra ...entry) []levigate.Finding {
			return arrange([]*Rule{rule}).judge(pairSheet(p, quantity.Fixed(percent, 4), extra...), false).findings
		}
		on := judge(p.Least)
		if len(on) != 1 || on[0].Row != p.Key || on[0].Severity != p.Level || on[0].Help != p.Do || !strings.Contains(on[0].Text, p.Why) ||
			len(on[0].At) != 2 || on[0].Sources[0] != p.Sources[0] {
			t.Errorf("%s: on its least share %s", p.Key, Print(on))
			continue
		}
		if under := judge(p.Least - 0.01); len(under) != 0 {
			t.Errorf("%s: under its least share %s", p.Key, Print(under))
		}
		if dry := judge(p.Least, oily()); (len(dry) == 0) != p.Water {
			t.Errorf("%s: without a polar liquid %s", p.Key, Print(dry))
		}
		if words := NeverSaid(on[0].Text + on[0].Help); len(words) > 0 {
			t.Errorf("%s says %q", p.Key, words)
		}
	}
}

// What is said of one substance stands before what is said of its class.
func TestNarrowClashesStandFirst(t *testing.T) {
	var order []string
	for _, p := range refdata.Clashes() {
		order = append(order, p.Key)
	}
	wide := slices.Index(order, "cationic-anionic")
	for _, key := range []string{"cationic-carbomer", "cationic-cmc", "cationic-hyaluronate", "cationic-benzoate", "cationic-xanthan"} {
		if at := slices.Index(order, key); at < 0 || at > wide {
			t.Errorf("%s must stand before cationic-anionic", key)
		}
	}
}
