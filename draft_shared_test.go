package levigate

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"
)

// The page applies commands too, so that what is typed shows at once. These
// cases hold both to the same outcome; the page's tests read the same file.
func TestThePageAppliesAlike(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("ui", "bench", "src", "grid", "testdata", "apply.json"))
	if err != nil {
		t.Fatal(err)
	}
	var cases []struct {
		Name    string
		Before  *Document
		Changes []Change
		After   Document
		Inverse []Change
		Clashes []Clash
		Refused bool
	}
	if err := json.Unmarshal(text, &cases); err != nil {
		t.Fatal(err)
	}
	var d Document
	for _, c := range cases {
		if c.Before != nil {
			d = *c.Before
		}
		inverse, clashes, err := d.Apply(&Command{Changes: c.Changes})
		if (err != nil) != c.Refused || len(inverse)+len(c.Inverse) > 0 && asText(t, inverse) != asText(t, c.Inverse) ||
			len(clashes)+len(c.Clashes) > 0 && asText(t, clashes) != asText(t, c.Clashes) || asText(t, d.clone()) != asText(t, c.After.clone()) {
			t.Errorf("%s: %v\n%+v\n%+v\n%s\nwant refused %v\n%+v\n%+v\n%s", c.Name, err, inverse, clashes, asText(t, d), c.Refused, c.Inverse, c.Clashes, asText(t, c.After))
		}
	}
	if len(cases) < 50 {
		t.Errorf("only %d cases", len(cases))
	}
}

func asText(t *testing.T, v any) string {
	t.Helper()
	b, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}
