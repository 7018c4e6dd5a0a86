package cite

import (
	"strings"
	"testing"
)

func TestParseRefuses(t *testing.T) {
	const head = "key\tmark\tlicence\ttext\n"
	for want, row := range map[string]string{
		"2 fields":                 "a\tread",
		`mark "seen"`:              "a\tseen\tfacts\tA paper",
		"a source needs a licence": "a\tread\t \tA paper",
		"listed twice":             "a\tread\tfacts\tA paper\na\tread\tfacts\tA paper",
	} {
		if _, err := parse(head + row); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: got %v, want %q", row, err, want)
		}
	}
}

func TestRefPrintsItsSource(t *testing.T) {
	if s := (Ref{Key: "sun2008", At: "table 1"}).String(); !strings.HasPrefix(s, "Sun 2008") || !strings.HasSuffix(s, ", table 1") {
		t.Error(s)
	}
}

func TestGradesRank(t *testing.T) {
	if Weakest(MeasuredHere, Estimated) != Estimated {
		t.Error("estimated is weaker than measured")
	}
	for g := Assumed; g <= MeasuredHere; g++ {
		if back, err := ParseGrade(g.String()); err != nil || back != g {
			t.Errorf("%s came back as %s, %v", g, back, err)
		}
	}
}
