package cite

import (
	_ "embed"
	"fmt"
	"sort"
	"strings"
)

// Source is one publication (or one named habit of the trade).
type Source struct {
	Key     string // author and year, lower case: "scatchard1938"
	Text    string // the reference as one would print it
	Licence string // under what terms its figures are used here
	Mark    Mark   // how we know it
}

// Ref points into a source: a key and the place in it.
type Ref struct {
	Key string
	At  string // "table 2", "eq. 4", "row S01"; may be empty for a whole work
}

// String prints a reference in full, with its place.
func (r Ref) String() string {
	s, ok := Find(r.Key)
	text := r.Key
	if ok {
		text = s.Text
	}
	if r.At != "" {
		text += ", " + r.At
	}
	return text
}

//go:embed sources.tsv
var sourcesTSV string

var sources = mustParse(sourcesTSV)

// Find looks a source up by its key.
func Find(key string) (Source, bool) {
	s, ok := sources[key]
	return s, ok
}

// All lists the sources by key.
func All() []Source {
	out := make([]Source, 0, len(sources))
	for _, s := range sources {
		out = append(out, s)
	}
	sort.Slice(out, func(i, j int) bool { return out[i].Key < out[j].Key })
	return out
}

func mustParse(tsv string) map[string]Source {
	m, err := parse(tsv)
	if err != nil {
		panic("cite: " + err.Error())
	}
	return m
}

// parse reads the bibliography: key, mark, licence, text; one source a line.
func parse(tsv string) (map[string]Source, error) {
	m := map[string]Source{}
	for i, line := range strings.Split(strings.TrimSpace(tsv), "\n") {
		if i == 0 || strings.HasPrefix(line, "#") || strings.TrimSpace(line) == "" {
			continue
		}
		f := strings.Split(line, "\t")
		if len(f) != 4 {
			return nil, fmt.Errorf("sources.tsv:%d: %d fields, want key, mark, licence, text", i+1, len(f))
		}
		mark, err := ParseMark(f[1])
		if err != nil {
			return nil, fmt.Errorf("sources.tsv:%d: %w", i+1, err)
		}
		for _, part := range f {
			if strings.TrimSpace(part) == "" {
				return nil, fmt.Errorf("sources.tsv:%d: %s: an empty field; a source needs a licence and a text", i+1, f[0])
			}
		}
		if _, dup := m[f[0]]; dup {
			return nil, fmt.Errorf("sources.tsv:%d: %s is listed twice", i+1, f[0])
		}
		m[f[0]] = Source{Key: f[0], Mark: mark, Licence: f[2], Text: f[3]}
	}
	return m, nil
}
