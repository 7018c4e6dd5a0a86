package program

import (
	"context"
	"errors"
	"io"
	"net/http"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"levigate"
	"levigate/rules"
)

func helpOf(err error) string {
	if e, ok := errors.AsType[*levigate.Error](err); ok {
		return e.Help
	}
	return ""
}

// tea is a formula as a maker would write it.
const tea = `levigate: formula/1
code: T-1
name: Tea
product: bath
lines:
  - {phase: A, material: Glycerin, percent: 40}
  - {phase: A, material: Aqua, qs: true}
`

func checked(t *testing.T, in Input, texts ...string) []Outcome {
	t.Helper()
	if in.Conditions == (levigate.Conditions{}) {
		in.Conditions.Temperature = levigate.Room
	}
	for _, text := range texts {
		in.Files = append(in.Files, File{Name: "t.formula.yaml", Data: []byte(text)})
	}
	out, err := New().Assess(context.Background(), in)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func TestAssess(t *testing.T) {
	out := checked(t, Input{}, tea, strings.Replace(tea, "Glycerin", "Glycerinne", 1), "")
	if a := out[0].Assessment; a == nil || a.Figures.Get("water.activity") == nil || len(a.Curves) > 0 {
		t.Errorf("%+v", out[0].Problems)
	}
	if p := out[1].Problems; len(p) != 1 || p[0].Line != 6 || !strings.Contains(p[0].Help, `"Glycerine"`) || out[1].Assessment != nil {
		t.Errorf("unknown raw material: %+v, help %q", p, p[0].Help)
	}
	if p := out[2].Problems; len(p) == 0 || out[2].Assessment != nil {
		t.Errorf("an empty file: %+v", p)
	}
}

func TestAssessOnlyTheParts(t *testing.T) {
	a := checked(t, Input{Parts: []string{"structure"}, Curves: true}, tea)[0].Assessment
	if a.Figures.Get("water.activity") != nil || a.Figures.Get("structure.density") == nil || a.Figures.Get("water.total") == nil {
		t.Error("want the composition and the structure alone")
	}
}

func TestAssessRefuses(t *testing.T) {
	for name, in := range map[string]Input{
		"too cold":     {Conditions: levigate.Conditions{Temperature: -15.1}},
		"too hot":      {Conditions: levigate.Conditions{Temperature: 60.5}},
		"no number":    {Conditions: levigate.Conditions{Temperature: nan()}},
		"no such part": {Conditions: levigate.Conditions{Temperature: 25}, Parts: []string{"watre"}},
		"humidity":     {Conditions: levigate.Conditions{Temperature: 25, Humidity: 100}},
	} {
		if _, err := New().Assess(context.Background(), in); levigate.CodeOf(err) != levigate.Invalid || helpOf(err) == "" {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func nan() float64 { var zero float64; return zero / zero }

func TestAssessStopsWhenTold(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	in := Input{Conditions: room(), Files: []File{{Name: "t", Data: []byte(tea)}}}
	if _, err := New().Assess(ctx, in); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
}

func TestAnswerTakesAllThreeSides(t *testing.T) {
	for percent, want := range map[string]string{"40": "above 0.60", "95": "below 0.60"} {
		a := checked(t, Input{}, strings.Replace(tea, "40", percent, 1))[0].Assessment
		if said := Answer(a); !strings.Contains(said, want) || !strings.Contains(said, "nine times in ten") {
			t.Errorf("%s %% glycerol: %s", percent, said)
		}
	}
	a := checked(t, Input{}, tea)[0].Assessment
	f := a.Figures.Get("water.activity")
	f.Value, f.Low, f.High = 0.7, 0.65, 0.76
	if said := sides(f); said != "above 0.60 with its whole band; cannot tell from 0.70 and 0.75; below 0.80 with its whole band" {
		t.Error(said)
	}
}

// No sentence of ours promises what only a laboratory, an assessor or the law
// can.
func TestNothingIsPromised(t *testing.T) {
	p := New()
	sheets, err := p.Sheets(context.Background())
	if err != nil || len(sheets) < 5 {
		t.Fatal(len(sheets), err)
	}
	for _, s := range sheets {
		if s.Assessment == nil {
			t.Errorf("%s: %v", s.File, s.Problems)
			continue
		}
		said := s.Answer + s.Cautions
		for _, f := range s.Assessment.Findings {
			said += f.Text + f.Help + f.Needs
		}
		if bad := rules.NeverSaid(said); len(bad) > 0 {
			t.Errorf("%s says %q", s.File, bad)
		}
	}
}

func TestWorkshopReadsItsFolderAnew(t *testing.T) {
	p := New()
	folder := fstest.MapFS{"t.formula.yaml": {Data: []byte(tea)}, "notes.txt": {Data: []byte("no formula")}}
	p.Folder = folder
	sheets, err := p.Sheets(context.Background())
	if err != nil || len(sheets) != 1 || sheets[0].Name != "t" {
		t.Fatalf("%+v, %v", sheets, err)
	}
	folder["t.formula.yaml"].Data = []byte("broken")
	s, err := p.Sheet(context.Background(), "T")
	if err != nil || len(s.Problems) == 0 {
		t.Errorf("a file broken since is shown as %+v, %v", s, err)
	}
	if _, err := p.Sheet(context.Background(), "../t"); levigate.CodeOf(err) != levigate.NotFound {
		t.Errorf("a path is no name: %v", err)
	}
}

func TestListenOnlyHere(t *testing.T) {
	for _, addr := range []string{"0.0.0.0:0", ":0", "[::]:0", "192.168.0.1:0", "example.org:80", "7420", ""} {
		p := New()
		if err := p.Listen(addr); levigate.CodeOf(err) != levigate.Invalid || helpOf(err) == "" {
			t.Errorf("%q: %v", addr, err)
			p.Close()
		}
	}
}

// The whole program starts, answers and ends.
func TestRun(t *testing.T) {
	p := New()
	p.Workspace, p.Page = t.TempDir(), nil
	if err := p.Listen("127.0.0.1:0"); err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	done := make(chan error, 1)
	go func() { done <- p.Run(ctx) }()
	for path, want := range map[string]string{"": "Walnut hand polish", "formulas/HP-01": "Moisture curve", "levigate.css": "--paper"} {
		ask, err := http.NewRequest("GET", p.URL()+path, nil)
		if err != nil {
			t.Fatal(err)
		}
		ask.Header.Set("Authorization", "Bearer "+p.Token())
		res, err := http.DefaultClient.Do(ask)
		if err != nil {
			t.Fatal(err)
		}
		body, _ := io.ReadAll(res.Body)
		res.Body.Close()
		if res.StatusCode != 200 || !strings.Contains(string(body), want) {
			t.Errorf("/%s: %d, without %q", path, res.StatusCode, want)
		}
	}
	cancel()
	select {
	case err := <-done:
		if err != nil {
			t.Error(err)
		}
	case <-time.After(5 * time.Second):
		t.Error("the program does not end")
	}
	if err := p.Close(); err != nil {
		t.Error(err)
	}
}

func TestNearest(t *testing.T) {
	names := []string{"water.activity", "water.reserve", "structure.density"}
	if got := nearest("water.activty", names); len(got) == 0 || got[0] != "water.activity" {
		t.Errorf("got %v", got)
	}
	if got := nearest("density", names); !slices.Equal(got, []string{"structure.density"}) {
		t.Errorf("got %v", got)
	}
	if got := nearest("qqqq", names); len(got) != 0 {
		t.Errorf("got %v", got)
	}
}
