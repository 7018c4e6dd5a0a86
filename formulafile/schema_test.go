package formulafile

import (
	"bytes"
	"encoding/json"
	"maps"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"
	"github.com/santhosh-tekuri/jsonschema/v6"
	"pgregory.net/rapid"

	"levigate"
)

func compiled(t testing.TB) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("formula.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("formula.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// plainJSON is a file as another program's YAML reader hands it to a schema;
// false when it is not even that.
func plainJSON(data []byte) (any, bool) {
	var v any
	if yaml.Unmarshal(data, &v) != nil {
		return nil, false
	}
	b, err := json.Marshal(v)
	if err != nil {
		return nil, false
	}
	v, err = jsonschema.UnmarshalJSON(bytes.NewReader(b))
	return v, err == nil
}

func TestSchemaTakesGood(t *testing.T) {
	s := compiled(t)
	names := files(t, "good")
	more, err := filepath.Glob("../examples/*/*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range append(names, more...) {
		data := bytesOf(t, name)
		if !bytes.Contains(data, []byte("levigate")) {
			continue
		}
		v, ok := plainJSON(bytes.TrimPrefix(data, []byte("\uFEFF")))
		if !ok {
			t.Errorf("%s: no plain YAML", name)
		} else if err := s.Validate(v); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		data := Write(someFormula(t))
		if v, ok := plainJSON(data); !ok {
			t.Fatalf("no plain YAML:\n%s", data)
		} else if err := s.Validate(v); err != nil {
			t.Fatalf("%v\n%s", err, data)
		}
	})
}

// beyond are the broken files that a schema passes: their fault lies in sums,
// order or comparison, in the digits as written, or in the bytes and marks that
// another YAML reader has taken away by then.
var beyond = []string{
	"anchor", "batch-fine", "batch-zero", "begins-with-comma", "block-head", "composition-low-high",
	"composition-short", "control", "density", "directive", "escape-digits", "escaped-control", "invisible",
	"latin1", "lost-character", "materials-twice", "merge-key", "no-space-after-colon", "notes-escape", "nul", "percent-decimals", "percent-hexadecimal", "percent-octal", "percent-plus",
	"percent-point-first", "percent-point-last", "percent-underscore", "question-key", "tag", "temperature-zero",
	"two-documents", "value-not-indented", "water-order",
}

func TestSchemaRefusesBroken(t *testing.T) {
	s := compiled(t)
	var passed []string
	for _, name := range files(t, "bad") {
		if v, ok := plainJSON(bytesOf(t, name)); ok && s.Validate(v) == nil {
			passed = append(passed, strings.TrimSuffix(filepath.Base(name), ".yaml"))
		}
	}
	if !slices.Equal(passed, beyond) {
		t.Errorf("the schema passes\n%q\nwhere these are expected\n%q", passed, beyond)
	}
}

// The schema's lists and limits are the program's.
func TestSchemaAgrees(t *testing.T) {
	var doc map[string]any
	if err := json.Unmarshal(Schema(), &doc); err != nil {
		t.Fatal(err)
	}
	at := func(path string) any {
		var v any = doc
		for key := range strings.SplitSeq(path, "/") {
			switch x := v.(type) {
			case map[string]any:
				v = x[key]
			case []any:
				v = x[int(key[0]-'0')]
			}
		}
		return v
	}
	strs := func(list []string) (out []any) {
		for _, s := range list {
			out = append(out, s)
		}
		return out
	}
	want := map[string]any{
		"properties/levigate/const":                      Edition,
		"properties/product/enum":                        strs(levigate.Products),
		"$defs/sits/enum":                                strs(places),
		"$defs/material/properties/evidence/enum":        strs(grades),
		"properties/lines/maxItems":                      float64(MaxLines),
		"properties/materials/maxItems":                  float64(MaxMaterials),
		"properties/making/maxItems":                     float64(MaxSteps),
		"$defs/material/properties/composition/maxItems": float64(MaxShares),
		"$defs/words/maxItems":                           float64(MaxWords),
		"$defs/code/maxLength":                           float64(MaxCode),
		"$defs/word/maxLength":                           float64(MaxCode),
		"$defs/name/maxLength":                           float64(MaxName),
		"$defs/material/properties/source/maxLength":     float64(MaxSource),
		"$defs/step/properties/text/maxLength":           float64(MaxText),
		"properties/notes/maxLength":                     float64(MaxNotes),
	}
	for path, s := range map[string]span{
		"$defs/material/properties/density":           densitySpan,
		"$defs/step/properties/temperature":           temperatureSpan,
		"$defs/step/properties/minutes":               minutesSpan,
		"$defs/isotherm/properties/gab/prefixItems/0": monolayerSpan,
		"$defs/isotherm/properties/gab/prefixItems/1": energySpan,
		"$defs/isotherm/properties/gab/prefixItems/2": stateSpan,
		"$defs/isotherm/properties/linear":            linearSpan,
	} {
		low := "minimum"
		if s.open {
			low = "exclusiveMinimum"
		}
		want[path+"/anyOf/0/"+low] = s.low
		want[path+"/anyOf/0/maximum"] = s.high
	}
	for _, path := range slices.Sorted(maps.Keys(want)) {
		if got := at(path); !reflect.DeepEqual(got, want[path]) {
			t.Errorf("%s is %v, want %v", path, got, want[path])
		}
	}
}
