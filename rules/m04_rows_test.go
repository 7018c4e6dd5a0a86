package rules

import (
	"testing"

	"levigate"
	"levigate/cite"
	"levigate/quantity"
	"levigate/refdata"
)

// productFor is a product kind that comes under a use.
var productFor = map[string]string{rinseOff: "shampoo", leaveOn: "body-lotion", oral: "mouthwash"}

// Every row of the annex is run from its own columns, for each use and each
// substance it names: over, on, under and straddling.
func TestEveryPreservativeRow(t *testing.T) {
	rule, _ := Find("M04")
	for _, row := range refdata.PreservativeLimits() {
		for _, use := range row.Use {
			for _, s := range row.Substances {
				judge := func(share levigate.Range) *levigate.Finding {
					// One gram of a raw material that is as much of the substance as asked.
					a := sheet(product(productFor[use]), line("1", "Raw material", role("preservative"),
						declares(&levigate.Substance{INCI: s.INCI}, share)))()
					for _, f := range arrange([]*Rule{rule}).judge(a, true).findings {
						if f.Row == "V/"+row.Entry {
							return &f
						}
					}
					t.Fatalf("V/%s %s %s: no finding", row.Entry, use, s.INCI)
					return nil
				}
				at := 100 * row.Limit / s.Factor // % of the raw material that makes the limit
				for _, c := range []struct {
					what    string
					share   levigate.Range
					verdict levigate.Verdict
				}{
					{"over", levigate.Exactly(at * 1.01), levigate.Broken},
					{"on", levigate.Exactly(at), levigate.Holds},
					{"under", levigate.Exactly(at * 0.99), levigate.Holds},
					{"straddling", levigate.Range{Typical: at, Low: at * 0.95, High: at * 1.05}, levigate.CannotTell},
				} {
					f := judge(c.share)
					want := levigate.Stop
					if c.verdict == levigate.CannotTell || row.From.Mark != cite.Read {
						want = levigate.Warn
					}
					if f.Verdict != c.verdict || f.Severity != want {
						t.Errorf("V/%s %s %s %s: %s %s, want %s %s", row.Entry, use, s.INCI, c.what, f.Severity, f.Verdict, want, c.verdict)
					}
					if f.Sources[0] != row.From.From {
						t.Errorf("V/%s: the finding names %v", row.Entry, f.Sources)
					}
				}
			}
		}
	}
}

// The most of a line that is printed lies within the limit when it is weighed.
func TestTheMostLiesWithin(t *testing.T) {
	rule, _ := Find("M04")
	for _, percent := range []string{"1.12", "1.3", "2.07", "3.333333"} {
		a := sheet(line(percent, "Blend", of("Phenoxyethanol", 90)))()
		f := arrange([]*Rule{rule}).judge(a, false).findings[0]
		for _, p := range f.Args["bound"].([]Part) {
			again := sheet(line(quantity.Fixed(p.Value, 2), "Blend", of("Phenoxyethanol", 90)))()
			if got := arrange([]*Rule{rule}).judge(again, false).findings; len(got) > 0 {
				t.Errorf("%s %%: %g is printed as the most, and %s", percent, p.Value, Print(got))
			}
		}
	}
}
