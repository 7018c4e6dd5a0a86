package assess

import (
	"runtime"
	"sync"
	"testing"

	"levigate"
	"levigate/internal/library"
	"levigate/quantity"
)

// forty is a formula of 40 lines, 20 of them solutes: larger than anyone makes.
var forty = []string{
	"Aqua", "8", "Glycerin", "20", "Propanediol", "2", "Propylene Glycol", "2", "Butylene Glycol", "1", "Sorbitol", "2", "Xylitol", "1",
	"Mannitol", "0.2", "Erythritol", "0.5", "Sucrose", "1", "Glucose", "0.5", "Fructose", "0.5", "Maltose", "0.5", "Urea", "0.5",
	"Sodium Chloride", "0.2", "Glycine", "0.2", "Proline", "0.2", "Serine", "0.2", "Betaine", "0.5", "Lactic Acid", "0.2", "Sodium Lactate", "0.2",
	"Honey, runny", "1", "Glycerin, 86.5 %", "2", "Sucrose laurate powder, high monoester", "3", "Sunflower oil, high-oleic, refined", "24.1",
	"Caprylic/capric triglyceride, liquid", "8", "Mixed tocopherols 70 % in sunflower oil", "0.3", "Kaolin, fine white", "5", "Maize starch", "3",
	"Rice starch", "1", "Bentonite, sodium", "1", "Green clay (illite, holds iron)", "1", "Walnut shell powder, 150–400 µm", "5",
	"Sweet orange peel oil", "0.2", "Lavender oil", "0.1", "Shea butter, refined", "1", "Castor oil", "1", "Panthenol 75 %", "0.5",
	"Xanthan gum, 80 mesh", "0.1", "Sodium benzoate, granules", "0.3",
}

func formulaOf(tb testing.TB, lib levigate.Library, lines ...string) *levigate.Formula {
	tb.Helper()
	f := &levigate.Formula{Code: "BENCH", Product: "hand-wash"}
	for i := 0; i < len(lines); i += 2 {
		f.Lines = append(f.Lines, levigate.Line{Phase: "A", Name: lines[i], Percent: quantity.MustDecimal(lines[i+1])})
	}
	for _, p := range f.Resolve(lib) {
		tb.Fatal(p)
	}
	return f
}

// BenchmarkCheck is one keystroke: composition, figures with bands, findings.
func BenchmarkCheck(b *testing.B) {
	lib := library.New(nil)
	r := Request{Formula: formulaOf(b, lib, forty...), Library: lib, Conditions: levigate.Conditions{Temperature: 25}}
	if n := len(r.Formula.Lines); n != 40 {
		b.Fatalf("%d lines", n)
	}
	for name, curves := range map[string]bool{"figures": false, "curves": true} {
		b.Run(name, func(b *testing.B) {
			r.Curves = curves
			b.ReportAllocs()
			for b.Loop() {
				Check(r)
			}
		})
	}
}

// BenchmarkTenThousand checks 10,000 formulas on every core.
func BenchmarkTenThousand(b *testing.B) {
	lib := library.New(nil)
	r := Request{Formula: formulaOf(b, lib, forty...), Library: lib, Conditions: levigate.Conditions{Temperature: 25}}
	for b.Loop() {
		var wg sync.WaitGroup
		for range runtime.GOMAXPROCS(0) {
			wg.Go(func() {
				for range 10000 / runtime.GOMAXPROCS(0) {
					Check(r)
				}
			})
		}
		wg.Wait()
	}
}
