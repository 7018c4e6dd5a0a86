package formulafile

import "testing"

// FuzzRead holds for any bytes: no panic, no problem without a place, a text
// and something to do, and what reads without a problem comes back from Write.
func FuzzRead(f *testing.F) {
	for _, folder := range []string{"good", "bad"} {
		for _, name := range files(f, folder) {
			// Long seeds make for slow steps and teach the fuzzer nothing.
			if data := bytesOf(f, name); len(data) < 4096 {
				f.Add(data)
			}
		}
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		formula, problems := Read("fuzz", data)
		for _, p := range problems {
			if p.Line < 1 || p.Column < 1 || p.Text == "" || p.Help == "" {
				t.Fatalf("a problem lacks its place, text or help: %+v", p)
			}
		}
		if (formula == nil) != (len(problems) > 0) {
			t.Fatalf("a formula: %v, with %d problems", formula != nil, len(problems))
		}
		if formula != nil {
			comesBack(t, formula)
		}
		_ = Format(problems, "fuzz")
	})
}
