package refdata

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

func TestBadSubstancesAreRefused(t *testing.T) {
	const head = "inci|kind|us_name|aliases|cas|chemical_formula|molar_mass|density|isotherm|sugar_head|head_like|state|charge|solubility"
	for row, want := range map[string]string{
		"Aqua|gas":                                     "kind",
		"|solute":                                      "INCI name",
		"Urea|solute||||||||||soft":                    "state",
		"Urea|solute|||||||||||positive":               "charge",
		"Urea|solute||||||||||||in water":              "want NAME: CELL",
		"Aqua|water|||7732-18-6 m recalled":            "check digit",
		"Aqua|water|||7732-18-5":                       "NUMBER MARK SOURCE",
		"Aqua|water|||7732-18-5 m nobody1999":          "bibliography",
		"Aqua|water|||||1.0":                           "want VALUE",
		"Aqua|water|||||||no such curve":               "no isotherm",
		"Sucrose Laurate|other|||||||| 0.5 m recalled": "go together",
		"Sucrose Laurate|other|||||||||Sucrose":        "go together",
	} {
		if _, err := readSubstance(oneRow(t, head, row, substanceColumns...)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: got %v, want an error with %q", row, err, want)
		}
	}
}

func TestClassesAreListedAndUsed(t *testing.T) {
	listed, used := map[string]bool{}, map[string]bool{}
	for _, c := range Classes() {
		if listed[c.Name] || c.Meaning == "" {
			t.Errorf("class %q is listed twice or has no meaning", c.Name)
		}
		listed[c.Name] = true
	}
	use := func(where string, classes []string) {
		for _, c := range classes {
			used[c] = true
			if !listed[c] {
				t.Errorf("%s: class %q is not in the list", where, c)
			}
		}
	}
	for _, e := range Entries() {
		use(e.INCI, e.Classes)
	}
	for _, m := range Materials() {
		use(m.Code, m.Classes)
	}
	for _, p := range Pairs() {
		for _, side := range []string{p.A, p.B} {
			if side == strings.ToLower(side) {
				use(p.Key, []string{side})
			}
		}
	}
	for c := range listed {
		if !used[c] {
			t.Errorf("class %q is listed and nothing belongs to it", c)
		}
	}
}

func TestCASCheckDigits(t *testing.T) {
	// Water, glycerol and sucrose; then a digit off, two swapped, and no form.
	for s, want := range map[string]bool{
		"7732-18-5": true, "56-81-5": true, "57-50-1": true,
		"7732-18-6": false, "7723-18-5": false, "56-81": false, "": false, "56-8a-5": false, "5-81-5": false,
	} {
		if CASChecks(s) != want {
			t.Errorf("CASChecks(%q) = %v", s, !want)
		}
	}
	for _, e := range Entries() {
		if e.CAS != "" && !CASChecks(e.CAS) {
			t.Errorf("%s: %s", e.INCI, e.CAS)
		}
	}
}

// atomic are the IUPAC abridged standard atomic weights, the second keying of
// what the molar masses were computed from.
var atomic = map[string]float64{
	"H": 1.008, "C": 12.011, "N": 14.007, "O": 15.999, "Na": 22.990, "Cl": 35.45, "K": 39.098, "Ca": 40.078, "Ti": 47.867, "Fe": 55.845, "Zn": 65.38,
	"Li": 6.94, "B": 10.81, "F": 18.998, "Mg": 24.305, "Al": 26.982, "Si": 28.085, "P": 30.974, "S": 32.06, "Cr": 51.996, "Mn": 54.938,
	"Cu": 63.546, "Br": 79.904, "Ag": 107.868, "Sn": 118.710, "I": 126.904, "Ba": 137.327, "Bi": 208.980,
}

var element = regexp.MustCompile(`([A-Z][a-z]?)(\d*)`)

func molarMass(t *testing.T, formula string) float64 {
	t.Helper()
	sum, read := 0.0, 0
	for _, m := range element.FindAllStringSubmatch(formula, -1) {
		n := 1
		if m[2] != "" {
			n, _ = strconv.Atoi(m[2])
		}
		a, ok := atomic[m[1]]
		if !ok {
			t.Errorf("%s: no atomic weight for %s", formula, m[1])
		}
		sum += a * float64(n)
		read += len(m[0])
	}
	if read != len(formula) {
		t.Errorf("formula %q is not read to its end", formula)
	}
	return sum
}

func TestMolarMassesComeFromTheFormulas(t *testing.T) {
	if m := molarMass(t, "C3H8O3"); math.Abs(m-92.094) > 1e-9 {
		t.Fatalf("glycerol weighs %g", m)
	}
	n := 0
	for _, e := range Entries() {
		if (e.Formula == "") != (e.MolarMass == 0) {
			t.Errorf("%s: formula %q and molar mass %g go together", e.INCI, e.Formula, e.MolarMass)
		}
		if e.Formula == "" {
			continue
		}
		n++
		if m := molarMass(t, e.Formula); math.Abs(m-e.MolarMass) > 0.0011 {
			t.Errorf("%s: %s weighs %.3f, the table says %g", e.INCI, e.Formula, m, e.MolarMass)
		}
	}
	if n < 40 {
		t.Errorf("only %d molar masses", n)
	}
}

func TestEverySubstanceIsReached(t *testing.T) {
	reached := map[string]bool{}
	for _, inci := range alone {
		if _, ok := Substance(inci); !ok {
			t.Errorf("%s is not on file", inci)
		}
		reached[inci] = true
	}
	for _, m := range Materials() {
		for _, s := range append(slices.Clone(m.Declared), m.Dry...) {
			reached[s.INCI] = true
		}
	}
	for _, e := range Entries() {
		if !reached[e.INCI] {
			t.Errorf("%s: no raw material holds it", e.INCI)
		}
		if _, ok := Substance(e.HeadLike); e.HeadLike != "" && !ok {
			t.Errorf("%s: head like %s, which is not on file", e.INCI, e.HeadLike)
		}
	}
}
