package refdata

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"levigate"
)

// Entry is a substance with what only a look-up needs.
type Entry struct {
	*levigate.Substance
	// USName is the name a US label takes; empty where it is the INCI name.
	USName string
	// Formula is the chemical formula the molar mass was computed from.
	Formula string
	// Delivered is the code of the raw material the substance is usually bought
	// as, when that holds water: a starch, a clay, a 70 % solution.
	Delivered string
	// Alone is the code of the raw material that the name stands for when it is
	// a line by itself; set where the name is that of a mixture, like honey.
	Alone string
}

// Class is a property of substances that rules look for.
type Class struct{ Name, Meaning string }

// A table under substances/ joins by being there; it leaves out the columns it
// has no use for.
var substanceColumns = []string{
	"inci", "us_name", "aliases", "cas", "kind", "state", "charge", "chemical_formula", "molar_mass", "density", "melting",
	"isotherm", "solubility", "hlb", "required_hlb", "sugar_head", "head_like", "classes", "delivered_by", "alone", "notes",
}

var (
	states  = []levigate.State{"", levigate.LiquidState, levigate.PasteState, levigate.SolidState}
	charges = []levigate.Charge{"", levigate.Anionic, levigate.Cationic, levigate.Nonionic, levigate.Amphoteric}
)

// Entries lists every substance on file.
func Entries() []Entry { return substances().list }

// Substance finds a substance by its INCI name, exactly as written in the
// tables. Aliases, case and accents are the library's business.
func Substance(inci string) (*levigate.Substance, bool) {
	s, ok := substances().byINCI[inci]
	return s, ok
}

// Classes lists the classes a substance or a raw material may belong to.
func Classes() []Class {
	t := mustOpen("words/classes")
	out := make([]Class, len(t.Rows))
	for i, r := range t.Rows {
		out[i] = Class{r.Text("class"), r.Text("meaning")}
	}
	return out
}

type substanceSet struct {
	list   []Entry
	byINCI map[string]*levigate.Substance
}

var substances = sync.OnceValue(func() substanceSet {
	set := substanceSet{byINCI: map[string]*levigate.Substance{}}
	for _, t := range folder("substances") {
		entries, err := readSubstances(t)
		if err != nil {
			panic("refdata: " + err.Error())
		}
		for _, e := range entries {
			if set.byINCI[e.INCI] != nil {
				panic("refdata: " + t.Name + ": " + e.INCI + " stands twice")
			}
			set.byINCI[e.INCI] = e.Substance
		}
		set.list = append(set.list, entries...)
	}
	return set
})

func readSubstances(t *Table) ([]Entry, error) {
	if err := t.allow(substanceColumns); err != nil {
		return nil, err
	}
	out := make([]Entry, 0, len(t.Rows))
	for _, r := range t.Rows {
		e, err := readSubstance(r)
		if err != nil {
			return nil, err
		}
		out = append(out, e)
	}
	return out, nil
}

func readSubstance(r Row) (Entry, error) {
	marks := levigate.Marks{}
	s := &levigate.Substance{
		INCI: r.Text("inci"), Aliases: list(r.word("aliases", marks)), Kind: levigate.Kind(r.word("kind", marks)),
		State: levigate.State(r.word("state", marks)), Charge: levigate.Charge(r.word("charge", marks)),
		HeadLike: r.word("head_like", marks), Classes: list(r.word("classes", marks)), Marks: marks,
	}
	e := Entry{s, r.word("us_name", marks), r.Text("chemical_formula"), r.Text("delivered_by"), r.Text("alone")}
	if e.USName != "" {
		s.Aliases = append([]string{e.USName}, s.Aliases...)
	}
	switch s.Kind {
	case levigate.Water, levigate.Solute, levigate.Oil, levigate.Powder, levigate.Other:
	default:
		return e, fmt.Errorf("%s: kind %q is not known", r.At(), s.Kind)
	}
	if !slices.Contains(states, s.State) {
		return e, fmt.Errorf("%s: state %q is not known", r.At(), s.State)
	}
	if !slices.Contains(charges, s.Charge) {
		return e, fmt.Errorf("%s: charge %q is not known", r.At(), s.Charge)
	}
	if s.INCI == "" {
		return e, fmt.Errorf("%s: a substance needs an INCI name", r.At())
	}
	var mass, head levigate.Range
	if err := marked(r, s.Marks, map[string]*levigate.Range{
		"molar_mass": &mass, "density": &s.Density, "sugar_head": &head, "melting": &s.Melting,
	}); err != nil {
		return e, err
	}
	s.MolarMass, s.SugarHead = mass.Typical, head.Typical
	if (s.SugarHead > 0) != (s.HeadLike != "") {
		return e, fmt.Errorf("%s: sugar_head and head_like go together", r.At())
	}
	if err := readCAS(r, s); err != nil {
		return e, err
	}
	if err := readLists(r, s); err != nil {
		return e, err
	}
	var err error
	s.Isotherm, err = isothermOf(r)
	return e, err
}

// readLists reads what may stand more than once.
func readLists(r Row, s *levigate.Substance) (err error) {
	if s.HLB, err = r.stated("hlb", s.Marks); err != nil {
		return err
	}
	if s.RequiredHLB, err = r.stated("required_hlb", s.Marks); err != nil {
		return err
	}
	dissolves, err := r.names("solubility", s.Marks)
	for _, d := range dissolves {
		s.Solubility = append(s.Solubility, levigate.Solubility{In: d.Name, Stated: d.Stated})
	}
	return err
}

// marked reads cells that carry their own mark, and keeps the marks by column.
func marked(r Row, marks levigate.Marks, into map[string]*levigate.Range) error {
	for column, v := range into {
		x, p, err := r.Cell(column)
		if err != nil {
			return err
		}
		if r.Text(column) != "" {
			*v, marks[column] = x, p
		}
	}
	return nil
}

// readCAS reads "NUMBER MARK SOURCE". A number that fails its check digit is
// a misprint, ours or the source's, and is refused.
func readCAS(r Row, s *levigate.Substance) error {
	f := strings.Fields(r.Text("cas"))
	if len(f) == 0 {
		return nil
	}
	if len(f) != 3 {
		return fmt.Errorf("%s: column cas: want NUMBER MARK SOURCE", r.At())
	}
	if !CASChecks(f[0]) {
		return fmt.Errorf("%s: %s is no CAS number: its check digit does not fit", r.At(), f[0])
	}
	p, err := provenance(f[1], f[2])
	if err != nil {
		return fmt.Errorf("%s: column cas: %w", r.At(), err)
	}
	s.CAS, s.Marks["cas"] = f[0], p
	return nil
}

// CASChecks reports whether a CAS registry number has its form and its check
// digit: the digits before it, each times its place counted from the right,
// added, modulo 10.
func CASChecks(s string) bool {
	part := strings.Split(s, "-")
	if len(part) != 3 || len(part[0]) < 2 || len(part[0]) > 7 || len(part[1]) != 2 || len(part[2]) != 1 {
		return false
	}
	sum := 0
	digits := part[0] + part[1] + part[2]
	for i := range len(digits) {
		if digits[i] < '0' || digits[i] > '9' {
			return false
		}
		sum += int(digits[i]-'0') * (len(digits) - 1 - i)
	}
	return sum%10 == int(part[2][0]-'0')
}

// isothermOf resolves a row's isotherm; a name no table holds is a fault.
func isothermOf(r Row) (*levigate.Isotherm, error) {
	name := r.Text("isotherm")
	if name == "" {
		return nil, nil
	}
	iso, ok := Isotherm(name)
	if !ok {
		return nil, fmt.Errorf("%s: no isotherm is called %q", r.At(), name)
	}
	return iso, nil
}

// list splits "a; b" and leaves nil for an empty cell.
func list(s string) []string {
	if s == "" {
		return nil
	}
	out := strings.Split(s, ";")
	for i := range out {
		out[i] = strings.TrimSpace(out[i])
	}
	return out
}
