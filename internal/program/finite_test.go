package program

import (
	"context"
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"levigate"
	"levigate/refdata"
	"levigate/work"
)

// Whatever a maker mixes, at any temperature: every figure is a finite number
// inside its band or says why it is missing, and the answer is JSON.
func TestAnyMixtureGivesFiniteFigures(t *testing.T) {
	p := New()
	materials := refdata.Materials()
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 12).Draw(t, "lines")
		var b strings.Builder
		b.WriteString("levigate: formula/1\ncode: R-1\nname: R\nproduct: bath\nlines:\n")
		left := 10000 // hundredths of a percent
		for i := range n {
			m := rapid.SampledFrom(materials).Draw(t, "material")
			share := left
			if i < n-1 {
				share = rapid.IntRange(0, left).Draw(t, "percent")
			}
			left -= share
			fmt.Fprintf(&b, "  - {phase: A, material: %s, percent: %d.%02d}\n", m.Code, share/100, share%100)
		}
		in := Input{Files: []File{{Name: "r", Data: []byte(b.String())}}, Curves: true, Working: rapid.Bool().Draw(t, "working"),
			Conditions: levigate.Conditions{Temperature: rapid.Float64Range(Coldest, Warmest).Draw(t, "°C"), Humidity: rapid.Float64Range(0, 99).Draw(t, "RH")}}
		out, err := p.Assess(context.Background(), in)
		if err != nil || out[0].Assessment == nil {
			t.Fatalf("%v %v\n%s", err, out, b.String())
		}
		for _, f := range out[0].Assessment.Figures {
			if f.State == work.Missing {
				if len(f.Notes) == 0 {
					t.Errorf("%s is missing and says not why", f.ID)
				}
				continue
			}
			for _, v := range []float64{f.Value, f.Low, f.High} {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Fatalf("%s is %g (%g to %g)\n%s", f.ID, f.Value, f.Low, f.High, b.String())
				}
			}
			if f.Value < f.Low || f.Value > f.High {
				t.Errorf("%s: %g is outside its band %g to %g\n%s", f.ID, f.Value, f.Low, f.High, b.String())
			}
		}
		for _, c := range out[0].Assessment.Curves {
			for i, v := range c.Y.Values {
				if math.IsNaN(v) || math.IsInf(v, 0) || math.IsNaN(c.Low[i]) || math.IsInf(c.High[i], 0) {
					t.Fatalf("%s at %g is %g (%g to %g)\n%s", c.ID, c.X.Values[i], v, c.Low[i], c.High[i], b.String())
				}
			}
		}
		if _, err := json.Marshal(p.Wire(&out[0])); err != nil {
			t.Fatal(err)
		}
	})
}
