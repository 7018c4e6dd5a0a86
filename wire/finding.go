package wire

import (
	"maps"
	"strconv"
	"strings"

	"levigate"
)

// Finding is one thing a rule has to say.
type Finding struct {
	Rule     string         `json:"rule"`
	Row      string         `json:"row"`
	Name     string         `json:"name"`
	Severity string         `json:"severity"`
	Verdict  string         `json:"verdict"`
	At       []string       `json:"at"`
	Text     string         `json:"text"`
	Help     string         `json:"help"`
	Needs    string         `json:"needs"`
	Args     map[string]any `json:"args"`
	Sources  []Source       `json:"sources"`
}

func findingOf(f *levigate.Finding) Finding {
	out := Finding{
		Rule: f.Rule, Row: f.Row, Name: f.Name, Severity: string(f.Severity), Verdict: string(f.Verdict),
		At: []string{}, Text: f.Text, Help: f.Help, Needs: f.Needs, Args: map[string]any{}, Sources: each(f.Sources, sourceOf),
	}
	for _, at := range f.At {
		out.At = append(out.At, Place(at))
	}
	maps.Copy(out.Args, f.Args)
	for name, v := range out.Args {
		if n, ok := v.(float64); ok {
			out.Args[name] = number(n)
		}
	}
	return out
}

// Place is where a finding points, as everyone outside the program counts: the
// program's "lines/2" is the third line, "lines/3".
func Place(at string) string {
	kind, n, _ := strings.Cut(at, "/")
	if kind == "lines" {
		if i, err := strconv.Atoi(n); err == nil {
			return "lines/" + strconv.Itoa(i+1)
		}
	}
	return at
}
