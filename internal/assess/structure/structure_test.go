package structure

import (
	"math"
	"testing"

	"levigate"
	"levigate/internal/assess/part"
	"levigate/internal/library"
	"levigate/quantity"
	"levigate/work"
)

var lib = library.New(nil)

// gel is the walnut polish in short: oil, polyol, fine powder, grains.
func gel(t *testing.T, kaolin levigate.Sits, readings ...levigate.Reading) *part.Sheet {
	t.Helper()
	f := &levigate.Formula{Code: "T"}
	for _, l := range []struct {
		name, percent string
		sits          levigate.Sits
	}{
		{"Glycerin, vegetable, 99.5 %", "25", ""}, {"Sunflower oil, high-oleic, refined", "60", ""},
		{"Kaolin, fine white", "8", kaolin}, {"Walnut shell powder, 150–400 µm", "7", ""},
	} {
		f.Lines = append(f.Lines, levigate.Line{Name: l.name, Percent: quantity.MustDecimal(l.percent), Sits: l.sits})
	}
	for _, p := range f.Resolve(lib) {
		t.Fatal(p)
	}
	s := &part.Sheet{Assessment: &levigate.Assessment{Formula: f}, Library: lib, Readings: readings, Curves: true}
	s.OpenLines()
	s.Continuous = s.Classify()
	run(s)
	return s
}

// Where a person sets the powder to sit, its place is no longer doubted and
// the figure moves to the end of the band that was meant.
func TestPowderSetToSit(t *testing.T) {
	const id = "structure.internal-fraction"
	free, oil, polyol := gel(t, "").Figures.Get(id), gel(t, levigate.InOil).Figures.Get(id), gel(t, levigate.InPolyol).Figures.Get(id)
	if !(polyol.Value < free.Value && free.Value < oil.Value) {
		t.Errorf("in polyol %.3f, not set %.3f, in oil %.3f", polyol.Value, free.Value, oil.Value)
	}
	for _, f := range []*work.Figure{oil, polyol} {
		if f.High-f.Low >= free.High-free.Low {
			t.Errorf("set to sit, the band %.3f–%.3f is no narrower than %.3f–%.3f", f.Low, f.High, free.Low, free.High)
		}
		for _, m := range f.Moves {
			if m.Cause == &whereabouts {
				t.Error("where the powder sits is still a cause")
			}
		}
	}
	grain := gel(t, levigate.Grain)
	if a, b := grain.Figures.Get("structure.grain-fraction").Value, gel(t, "").Figures.Get("structure.grain-fraction").Value; !(a > b) {
		t.Errorf("kaolin as a grain: %.3f, as powder %.3f", a, b)
	}
}

// A density that was weighed becomes the figure, keeps the calculated one
// beside it and says how much air it means.
func TestDensityReading(t *testing.T) {
	before := gel(t, "").Figures.Get("structure.density").Value
	s := gel(t, "", levigate.Reading{ID: "D1", Subject: levigate.Subject{Kind: "version", Key: "t"}, Property: "structure.density",
		Value: 0.95 * before, Plus: 0.005, Instrument: "density cup"})
	f := s.Figures.Get("structure.density")
	if f.Value != 0.95*before || f.Calculated == nil || math.Abs(f.Calculated.Value-before) > 1e-12 {
		t.Errorf("the reading did not become the figure: %+v", f)
	}
	if len(f.Notes) != 1 || f.Notes[0] != "the difference from the calculated value means about 5.0 % air by volume" {
		t.Errorf("notes %q", f.Notes)
	}
}

// Her own reading of when it pours takes the place of the shaded stretch.
func TestPoursReadingReplacesTheStretch(t *testing.T) {
	mark := func(s *part.Sheet) levigate.CurveMark { return s.Assessment.Curves[0].Marks[0] }
	if m := mark(gel(t, "")); m.ID != "body" || !(m.ToX > m.X) {
		t.Errorf("without a reading: %+v", m)
	}
	s := gel(t, "", levigate.Reading{ID: "P1", Subject: levigate.Subject{Kind: "version", Key: "T"}, Property: PoursAt, Value: 12})
	if m := mark(s); m.ID != "pours" || m.X != 12 || m.ToX != 12 {
		t.Errorf("with a reading: %+v", m)
	}
}

// The volumes of the parts make up the whole.
func TestVolumesAddUp(t *testing.T) {
	s := gel(t, "")
	var sum float64
	for _, id := range []string{"structure.volume-oil", "structure.volume-polar", "structure.volume-powder", "structure.volume-grain"} {
		sum += s.Figures.Get(id).Value
	}
	if d := s.Figures.Get("structure.density").Value; math.Abs(100/sum-d) > 1e-12 {
		t.Errorf("100 g in %.4f mL is not %.4f g/mL", sum, d)
	}
}
