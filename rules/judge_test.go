package rules

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"levigate"
)

// says makes a rule that speaks when the first line is called its word.
func says(id, word string, after ...string) *Rule {
	return &Rule{
		ID: id, Name: "n" + strings.ToLower(id), Severity: levigate.Advice, After: after,
		Messages: map[string]Message{"x": {Text: "heard"}},
		Check: func(s *Subject, r *Report) {
			if strings.Contains(s.Name(0), word) {
				r.Broken(Note{Say: "x"})
			}
		},
	}
}

func heard(rules []*Rule, text string, all bool) string {
	var out []string
	for _, f := range arrange(rules).judge(sheet(line("1", text))(), all).findings {
		if f.Verdict == levigate.NotJudged {
			out = append(out, f.Rule+"-"+f.Text)
		} else {
			out = append(out, f.Rule)
		}
	}
	return strings.Join(out, " ")
}

func TestQuietWhileTheRootCauseShows(t *testing.T) {
	// C10 waits for C20 and W01 for C10, so a cause may have a higher number and
	// quiet goes down the chain.
	rules := []*Rule{says("C10", "a", "C20"), says("C20", "b"), says("W01", "c", "C10")}
	for text, want := range map[string]string{
		"abc": "C20", "ac": "C10", "bc": "C20", "c": "W01", "": "", "ab": "C20",
	} {
		if got := heard(rules, text, false); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	want := "C10-Not judged while C20 (nc20) is open. C20 W01-Not judged while C20 (nc20) is open."
	if got := heard(rules, "abc", true); got != want {
		t.Errorf("all: %q, want %q", got, want)
	}
}

func TestACircleOfCausesPanics(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("two rules that wait for each other are arranged")
		}
	}()
	arrange([]*Rule{says("C10", "a", "C20"), says("C20", "b", "C10")})
}

func TestFindingsComeInNumberOrder(t *testing.T) {
	for _, all := range []bool{false, true} {
		findings := Judge(big(), all)
		if len(findings) == 0 {
			t.Fatal("the large example says nothing")
		}
		if !slices.IsSortedFunc(findings, func(a, b levigate.Finding) int { return strings.Compare(a.Rule, b.Rule) }) {
			t.Error("findings are out of order")
		}
		again := Judge(big(), all)
		if Print(findings) != Print(again) {
			t.Error("the same check is judged differently twice")
		}
		for _, f := range findings {
			if !all && (f.Verdict == levigate.Holds || f.Verdict == levigate.NotJudged) {
				t.Errorf("%s shows a row that %s", f.Rule, f.Verdict)
			}
		}
	}
}

// An assessment with nothing in it must not trip any rule.
func TestNothingAtAll(t *testing.T) {
	a := &levigate.Assessment{Formula: &levigate.Formula{}}
	if got := Judge(a, false); len(got) != 0 {
		t.Errorf("an empty check says %s", Print(got))
	}
	Judge(a, true)
}

// big is a sheet of 40 lines: eight of them powders, blends among the rest.
func big() *levigate.Assessment {
	entries := []entry{activity(0.31, 0.28, 0.35), figure("water.reserve", 5.8, 5.1, 6.4), product("hand-wash")}
	for i := range 40 {
		name := fmt.Sprintf("Raw material %d", i)
		traits := []trait{of(fmt.Sprintf("Substance %d", i), 60, "ester-oil"), of(fmt.Sprintf("Substance %d", i+1), 40, "plant-oil", "unsaturated-oil")}
		switch {
		case i%5 == 0:
			traits = []trait{of(fmt.Sprintf("Powder %d", i), 100, "clay", "mineral-powder", "bioburden"), water(1), caution("dust")}
		case i == 1:
			traits = []trait{of("Phenoxyethanol", 90, "preservative", "phenolic-preservative"), of("Ethylhexylglycerin", 10), role("preservative")}
		}
		percent := "2.5"
		if i == 1 {
			percent = "0.5"
		} else if i == 2 {
			percent = "4.5"
		}
		entries = append(entries, line(percent, name, traits...))
	}
	return sheet(entries...)()
}

// quiet is as large and gives nobody anything to say: the cost of a keystroke
// that changes nothing.
func quiet() *levigate.Assessment {
	entries := []entry{activity(0.31, 0.28, 0.35), figure("water.reserve", 5.8, 5.1, 6.4), product("hand-wash")}
	for i := range 40 {
		entries = append(entries, line("2.5", fmt.Sprintf("Raw material %d", i),
			of(fmt.Sprintf("Substance %d", i), 60, "ester-oil"), of(fmt.Sprintf("Substance %d", i+1), 40, "plant-oil", "unsaturated-oil")))
	}
	return sheet(entries...)()
}

func BenchmarkJudge(b *testing.B) {
	for _, c := range []struct {
		name string
		a    *levigate.Assessment
		all  bool
	}{{"40 lines, quiet", quiet(), false}, {"40 lines, 4 findings", big(), false}, {"40 lines, all rows", big(), true}} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Judge(c.a, c.all)
			}
		})
	}
}
