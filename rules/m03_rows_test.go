package rules

import (
	"strings"
	"testing"

	"levigate"
	"levigate/quantity"
	"levigate/refdata"
)

// pairSheet is a formula that holds the two sides of a row and nothing else.
func pairSheet(p refdata.Pair, powder string, extra ...entry) *levigate.Assessment {
	side := func(percent, kind string) entry {
		if kind == strings.ToLower(kind) {
			return line(percent, "Something of class "+kind, is(kind))
		}
		s := &levigate.Substance{INCI: kind, MolarMass: 300}
		return line(percent, "Pure "+kind, declares(s, levigate.Exactly(100)))
	}
	return sheet(append(extra, side(powder, p.A), side("0.01", p.B))...)()
}

// spoke is the finding on a row, with nothing else allowed beside it.
func spoke(t *testing.T, p refdata.Pair, findings []levigate.Finding) *levigate.Finding {
	t.Helper()
	var out *levigate.Finding
	for i := range findings {
		switch f := &findings[i]; {
		case f.Rule != "M03":
		case f.Row != p.Key:
			t.Errorf("%s: row %s speaks in its place", p.Key, f.Row)
		default:
			out = f
		}
	}
	return out
}

// Every row of the pairs is run from its own columns: over, on and under its
// least share, without a polar liquid, and with its sources and severity.
func TestEveryPair(t *testing.T) {
	rule, _ := Find("M03")
	for _, p := range refdata.Pairs() {
		judge := func(a *levigate.Assessment) []levigate.Finding {
			return arrange([]*Rule{rule}).judge(a, false).findings
		}
		percent := func(v float64) string { return quantity.Fixed(v, 4) }
		over := spoke(t, p, judge(pairSheet(p, percent(p.Least+5))))
		if over == nil {
			t.Errorf("%s: silent on its own pair", p.Key)
			continue
		}
		if over.Severity != p.Level || over.Verdict != levigate.Broken || len(over.At) != 2 {
			t.Errorf("%s: %s %s at %s", p.Key, over.Severity, over.Verdict, over.At)
		}
		if !strings.Contains(over.Text, p.Why) || over.Help != p.Do || over.Sources[0] != p.Sources[0] {
			t.Errorf("%s: the finding leaves out what the row says: %s", p.Key, over.Text)
		}
		if spoke(t, p, judge(pairSheet(p, percent(p.Least)))) == nil {
			t.Errorf("%s: silent on its least share", p.Key)
		}
		if spoke(t, p, judge(pairSheet(p, percent(p.Least-0.01)))) != nil {
			t.Errorf("%s: speaks under its least share", p.Key)
		}
		if dry := spoke(t, p, judge(pairSheet(p, "5", oily()))); (dry == nil) != p.Water {
			t.Errorf("%s: water is %v, and without a polar liquid it says %v", p.Key, p.Water, dry)
		}
		if words := NeverSaid(over.Text + over.Help); len(words) > 0 {
			t.Errorf("%s says %q", p.Key, words)
		}
	}
}

// What can be held never exceeds what is there, grows with the powder, and
// comes to the grams times the capacity.
func TestTheMostAPowderHolds(t *testing.T) {
	p := refdata.Pair{Capacity: levigate.Range{Typical: 200, Low: 100, High: 300}}
	one := []amount{{grams: 1}}
	for _, c := range []struct{ powder, share, highest float64 }{{0.1, 2, 3}, {1, 20, 30}, {4, 80, 100}, {10, 100, 100}} {
		share, highest, known := atMost(&p, []amount{{grams: c.powder}}, one)
		if !known || !near(share, c.share) || !near(highest, c.highest) {
			t.Errorf("%g g: %g %% and %g %%, want %g and %g", c.powder, share, highest, c.share, c.highest)
		}
	}
	if _, _, known := atMost(&refdata.Pair{}, one, one); known {
		t.Error("a row without a capacity gives a bound")
	}
}

func near(a, b float64) bool { return a-b < 1e-9 && b-a < 1e-9 }

// Two lines get one finding, and a line beside two others is asked for both.
func TestTwoLinesGetOneFinding(t *testing.T) {
	rule, _ := Find("M03")
	a := sheet(line("5", "Green clay", is("clay", "iron-bearing")), line("5", "Kaolin", is("clay")), line("3", "Ascorbic acid", is("ascorbic")))()
	var rows []string
	for _, f := range arrange([]*Rule{rule}).judge(a, false).findings {
		rows = append(rows, f.Row+" "+strings.Join(f.At, " "))
	}
	if got, want := strings.Join(rows, "; "), "iron-ascorbic lines/0 lines/2; clay-ascorbic lines/1 lines/2"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
}
