package water

import (
	"math"
	"testing"

	"levigate"
	"levigate/cite"
	"levigate/work"
)

var gel = []string{"Glycerin, vegetable, 99.5 %", "21", "Purified water", "2", "Sunflower oil, high-oleic, refined", "63", "Maize starch", "6", "Kaolin, fine white", "8"}

func TestReadingOfActivityBecomesTheFigure(t *testing.T) {
	plain := sheetOf(t, gel...)
	run(plain)
	before, room := plain.Figures.Get(activityID), plain.Figures.Get("water.reserve")

	s := sheetOf(t, gel...)
	s.Readings = []levigate.Reading{{ID: "R1", Subject: levigate.Subject{Kind: "version", Key: "T"}, Property: activityID,
		Value: before.Value + 0.05, Plus: 0.01, Conditions: levigate.Conditions{Temperature: 25}, Instrument: "closed cup"}}
	run(s)
	f, after := s.Figures.Get(activityID), s.Figures.Get("water.reserve")
	if f.Value != before.Value+0.05 || f.Grade != cite.MeasuredHere || f.Reading != "R1" {
		t.Errorf("the reading did not become the figure: %+v", f)
	}
	if f.Calculated == nil || math.Abs(f.Calculated.Value-before.Value) > 1e-9 {
		t.Errorf("the calculated value is not kept beside it: %v, want %g", f.Calculated, before.Value)
	}
	// A higher activity at the same water means the solution holds less, so less
	// room is left, and it is better known.
	if !(after.Value < room.Value) || !(after.High-after.Low < room.High-room.Low) {
		t.Errorf("room %.2f (%.2f–%.2f) became %.2f (%.2f–%.2f)", room.Value, room.Low, room.High, after.Value, after.Low, after.High)
	}
	// The calibrated model passes through the reading.
	y := build(s)
	if _, _, ok := y.calibrate(); !ok {
		t.Fatal("not calibrated")
	}
	if a := y.sum.Activity(y.total); math.Abs(a-f.Value) > 1e-9 {
		t.Errorf("the calibrated model gives %.6f at the reading %.6f", a, f.Value)
	}
}

func TestReadingOfALotMovesEverything(t *testing.T) {
	plain := sheetOf(t, gel...)
	run(plain)
	s := sheetOf(t, gel...)
	s.Readings = []levigate.Reading{{ID: "R2", Subject: levigate.Subject{Kind: "material", Key: "maize starch"}, Property: "water",
		Value: 4, Plus: 0.3, Instrument: "drying at 105 °C"}}
	s.OpenLines()
	run(s)
	a, b := plain.Figures.Get(activityID), s.Figures.Get(activityID)
	if !(b.Value < a.Value) {
		t.Errorf("drier starch should lower the activity: %.4f to %.4f", a.Value, b.Value)
	}
	for _, m := range b.Moves {
		if m.Cause.Key == s.Lines[3].Opened.Water.Key && m.Cause.Grade != cite.MeasuredHere {
			t.Errorf("the lot's water is still %s", m.Cause.Grade)
		}
	}
}

func TestTemperatureOutsideIsMarked(t *testing.T) {
	s := sheetOf(t, gel...)
	s.Conditions.Temperature = 55
	run(s)
	f := s.Figures.Get(activityID)
	if f.State != work.OutOfRange || f.Value <= 0 || len(f.Notes) == 0 {
		t.Errorf("55 °C: %s %g %q", f.State, f.Value, f.Notes)
	}
}
