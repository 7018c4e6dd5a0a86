package assess

import (
	"fmt"
	"math"
	"testing"

	"levigate"
	"levigate/internal/library"
	"levigate/quantity"
	"levigate/refdata"
)

// inci is the line a maker would write for a measured substance.
var inci = map[string]string{
	"glycerol": "Glycerin", "1,3-propanediol": "Propanediol", "propylene glycol": "Propylene Glycol", "sorbitol": "Sorbitol",
	"xylitol": "Xylitol", "mannitol": "Mannitol", "sucrose": "Sucrose", "glucose": "Glucose", "fructose": "Fructose", "maltose": "Maltose",
	"urea": "Urea", "sodium chloride": "Sodium Chloride", "potassium chloride": "Potassium Chloride", "serine": "Serine",
	"glycine": "Glycine", "alanine": "Alanine", "proline": "Proline", "lactic acid": "Lactic Acid", "citric acid": "Citric Acid",
}

// solution is a measured point written as a formula.
func solution(t testing.TB, lib levigate.Library, p refdata.Point) *levigate.Formula {
	f := &levigate.Formula{Code: "T"}
	left := quantity.Hundred
	for _, part := range p.Parts {
		name, ok := inci[part.Substance]
		if !ok {
			return nil
		}
		d := quantity.MustDecimal(fmt.Sprintf("%.6f", 100*part.Share))
		left = left.Sub(d)
		f.Lines = append(f.Lines, levigate.Line{Phase: "A", Name: name, Percent: d})
	}
	f.Lines = append(f.Lines, levigate.Line{Phase: "A", Name: "Aqua", Percent: left})
	for _, p := range f.Resolve(lib) {
		t.Fatal(p)
	}
	return f
}

// Measured solutions, written as a maker would write them and checked like any
// formula, come out within the errors this project set itself; and nine in ten
// lie inside the band.
func TestMeasuredSolutionsAsFormulas(t *testing.T) {
	lib := library.New(nil)
	type tally struct {
		n      int
		square float64
		worst  float64
	}
	by := map[string]*tally{}
	inside, all := 0, 0
	for _, p := range refdata.Measured() {
		f := solution(t, lib, p)
		if f == nil || p.Celsius < -16 || p.Celsius > 60 {
			continue
		}
		a := Check(Request{Formula: f, Library: lib, Conditions: levigate.Conditions{Temperature: p.Celsius}, Parts: []string{"water"}})
		fig := a.Figures.Get("water.activity")
		key := p.Table
		for _, part := range p.Parts {
			key += " " + part.Substance
		}
		if by[key] == nil {
			by[key] = &tally{}
		}
		d := fig.Value - p.Activity
		k := by[key]
		k.n++
		k.square += d * d
		if math.Abs(d) > math.Abs(k.worst) {
			k.worst = d
		}
		all++
		if p.Activity >= fig.Low-5e-5 && p.Activity <= fig.High+5e-5 {
			inside++
		}
	}
	for key, k := range by {
		t.Logf("%-60s n %3d rmse %.4f worst %+.4f", key, k.n, math.Sqrt(k.square/float64(k.n)), k.worst)
	}
	if share := float64(inside) / float64(all); share < 0.9 {
		t.Errorf("%d of %d measured points lie inside the band", inside, all)
	}
	for key, limit := range map[string]float64{
		"scatchard1938 glycerol": 0.001, "miner1953-hygrostat glycerol": 0.006, "guendouzi2001 potassium chloride": 0.0015,
		"robinson1934 sucrose": 0.003, "crc-concentrative sucrose": 0.003, "scatchard1938 urea": 0.003, "crc-concentrative urea": 0.003,
		"zaoui2016 1,3-propanediol": 0.014, "ebrahimi2016 xylitol": 0.001, "ebrahimi2016 glucose": 0.001, "crc-concentrative glucose": 0.001,
		"crc-concentrative mannitol":          0.001,
		"held2014 glycine potassium chloride": 0.006, "held2014 proline potassium chloride": 0.006,
	} {
		k := by[key]
		if k == nil {
			t.Errorf("%s: no points", key)
			continue
		}
		if r := math.Sqrt(k.square / float64(k.n)); r > limit {
			t.Errorf("%s: rmse %.5f, want at most %g (worst %+.4f)", key, r, limit, k.worst)
		}
	}
}
