package chart

import (
	"encoding/xml"
	"flag"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "rewrite the golden files")

func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s differs", path)
	}
}

// hill is a chart with one of everything; its texts hold what must be escaped.
func hill() *Spec {
	s := &Spec{Name: `A <hill> & "its" 'foot'`, Width: 400, Height: 300, X: Round("way & <mean>, km", 0, 10), Y: Round("", 0, 90), Hue: "oil", End: "summit <b>",
		Point:   &Point{X: 3, Y: 27, Low: 2.5, High: 3.5, Text: "we & they"},
		Limits:  []Limit{{5, "tree line"}, {8, "a <name> so long that it has to be broken into several lines"}},
		Stretch: &Stretch{From: 6, To: 7, Text: "scree <slow>", Note: "take care"},
		Bracket: &Bracket{X: 5, From: 27, To: 75, Text: "to climb", Note: "48 m"},
		Foot:    []Tick{{1, "low"}, {1.2, "too near"}, {4, "half"}}, FootTitle: "weather",
	}
	for x := 0.0; x <= 10; x++ {
		y := 10 * x * (1 - x/20)
		s.At, s.Line, s.Low, s.High = append(s.At, x), append(s.Line, y), append(s.Low, y-3), append(s.High, y+3)
	}
	return s
}

func TestDraw(t *testing.T) {
	got := Draw(hill(), "clip-hill")
	golden(t, "hill.svg", got)
	if again := Draw(hill(), "clip-hill"); again != got {
		t.Error("the same chart twice gives two images")
	}
}

func TestDrawWhisker(t *testing.T) {
	golden(t, "whisker.svg", DrawWhisker(Whisker{Min: 0, Max: 1, Value: 0.3, Low: 0.28, High: 0.34,
		Ticks: []Tick{{0, "0"}, {1, "1"}, {0.6, "<0.60>"}, {0.95, "no room for this"}}}))
}

// An image is well-formed whatever the texts hold, and keeps no text as markup.
func TestTextIsEscaped(t *testing.T) {
	for _, image := range []string{Draw(hill(), `a"b<c`), DrawWhisker(Whisker{Max: 1, Ticks: []Tick{{0.5, `<script>"&`}}})} {
		d := xml.NewDecoder(strings.NewReader(image))
		for {
			token, err := d.Token()
			if err == io.EOF {
				break
			}
			if err != nil {
				t.Fatal(err)
			}
			if e, ok := token.(xml.StartElement); ok && strings.Contains("script hill mean name b slow", e.Name.Local) {
				t.Errorf("text became the element %s", e.Name.Local)
			}
		}
	}
}

// A curve that runs off the plot is cut, so that no image holds numbers no
// reader can take.
func TestSteepCurveStaysFinite(t *testing.T) {
	s := hill()
	s.Line[5], s.High[5] = 1e300, 1e300
	if image := Draw(s, "c"); strings.Contains(image, "Inf") || strings.Contains(image, "NaN") || strings.Contains(image, "00000000000") {
		t.Error("the image holds a number without end")
	}
}

func TestRoundHoldsItsRange(t *testing.T) {
	for _, most := range []float64{1e-6, 0.19, 1, 3.19, 20.8, 99.9, 1234} {
		a := Round("", 0, most)
		if a.Max < most || len(a.Ticks) < 4 || len(a.Ticks) > 7 || math.Abs(a.Ticks[len(a.Ticks)-1].At-a.Max) > 1e-9*most {
			t.Errorf("to %g: axis to %g with %d ticks", most, a.Max, len(a.Ticks))
		}
	}
}
