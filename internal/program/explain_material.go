package program

import (
	"fmt"
	"strconv"
	"strings"

	"levigate"
	"levigate/cite"
	"levigate/quantity"
	"levigate/refdata"
	"levigate/work"
)

// explainMaterial prints everything on file about a raw material, each field
// with how it came in.
func explainMaterial(m *levigate.Material) Explanation {
	x := Explanation{Kind: "raw material", ID: m.Code, Title: m.Name}
	f := fields{marks: m.Marks}
	f.word("form", string(m.Form), "form")
	f.word("goes into", belongsWords[m.Belongs], "belongs")
	f.word("plays the part of", strings.Join(m.Role, ", "), "role")
	f.number("water as delivered, g per 100 g", m.Water, "water")
	f.number("density, g/mL", m.Density, "density")
	f.number("usual share of a formula, %", m.Use, "use")
	f.number("oil absorption, g per 100 g", m.OilAbsorption, "oil_absorption")
	f.number("particle size, µm", m.Size, "size_um")
	f.word("a fine powder of it sits in the", string(m.Sits), "sits")
	f.stated("HLB", m.HLB, "hlb")
	f.word("care", strings.Join(m.Cautions, ", "), "cautions")
	f.word("storage", strings.Join(m.Storage, ", "), "storage")
	f.word("what rules look for", strings.Join(classesOf(m), ", "), "classes")
	x.Sections = append(x.Sections, Section{Text: "Source: " + m.Source + "; evidence: " + m.Grade.String() + ". A typical delivery: your supplier's sheet and your own readings come before it."},
		Section{Head: "On file", Table: f.table()},
		Section{Head: "Declared as, % by weight as added", Table: shares(m.Declared, m.Marks, "declared")})
	if len(m.Dry) > 0 {
		x.Sections = append(x.Sections, Section{Head: "What is not water is truly", Table: shares(m.Dry, m.Marks, "dry")})
	}
	return sourced(x, f.refs)
}

// explainSubstance prints everything on file about a substance, and which raw
// materials bring it.
func explainSubstance(s *levigate.Substance) Explanation {
	x := Explanation{Kind: "substance", ID: s.INCI, Title: s.INCI}
	f := fields{marks: s.Marks}
	us, ok := refdata.LabelName(s.INCI, "us")
	if !ok {
		us = "none on file"
	}
	f.word("on a US label", us, "us_name")
	f.word("also found as", strings.Join(s.Aliases, ", "), "aliases")
	f.word("CAS", s.CAS, "cas")
	f.word("counts as", string(s.Kind), "kind")
	f.word("at 25 °C", string(s.State), "state")
	f.word("charge in water", string(s.Charge), "charge")
	f.number("molar mass, g/mol", levigate.Exactly(s.MolarMass), "molar_mass")
	f.number("density, g/mL", s.Density, "density")
	f.number("melts at, °C", s.Melting, "melting")
	f.stated("HLB", s.HLB, "hlb")
	f.stated("HLB an emulsifier needs for it in water", s.RequiredHLB, "required_hlb")
	for _, d := range s.Solubility {
		f.number("dissolves in "+d.In+", g on 100 g", d.Range, "solubility/"+d.In)
	}
	f.word("what rules look for", strings.Join(s.Classes, ", "), "classes")
	if s.Isotherm != nil {
		f.word("water isotherm", s.Isotherm.Name, "isotherm")
	}
	x.Sections = append(x.Sections, Section{Head: "On file", Table: f.table()})
	var in []string
	for _, m := range refdata.Materials() {
		for _, share := range m.Declared {
			if share.Substance == s {
				in = append(in, fmt.Sprintf("%s, %s: %s %%", m.Code, m.Name, quantity.Significant(share.Percent.Typical, 3)))
			}
		}
	}
	if len(in) > 0 {
		x.Sections = append(x.Sections, Section{Head: "Raw materials that bring it", Items: in})
	}
	return sourced(x, f.refs)
}

var belongsWords = map[levigate.Belongs]string{
	levigate.InWaterPhase: "phase of water and polyols", levigate.InOilPhase: "oil phase",
	levigate.InPowderPhase: "powders", levigate.InCoolDown: "cool-down, below about 40 °C",
}

// fields collects what is on file, leaving out what is not.
type fields struct {
	marks levigate.Marks
	rows  [][]string
	refs  []cite.Ref
}

func (f *fields) word(title, value, column string) {
	if value == "" {
		return
	}
	known := ""
	if p, ok := f.marks[column]; ok {
		known = p.Mark.String()
		f.refs = append(f.refs, p.From)
	}
	f.rows = append(f.rows, []string{title, value, known})
}

func (f *fields) number(title string, r levigate.Range, column string) {
	if r.Known() {
		f.word(title, spread(r), column)
	}
}

// stated writes a number that sources may disagree about; the first is used.
func (f *fields) stated(title string, list []levigate.Stated, column string) {
	var said []string
	for i, s := range list {
		if i > 0 {
			said = append(said, "elsewhere "+spread(s.Range)+" ("+s.Mark.String()+")")
			f.refs = append(f.refs, s.From)
			continue
		}
		said = append(said, spread(s.Range))
	}
	f.word(title, strings.Join(said, "; "), column)
}

func (f *fields) table() *work.Table {
	return &work.Table{Head: []string{"", "", "how it is known"}, Rows: f.rows}
}

// spread writes a typical value with its range, keeping the digits on file.
func spread(r levigate.Range) string {
	plain := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	if r.Low == r.High {
		return plain(r.Typical)
	}
	return fmt.Sprintf("%s (%s–%s)", plain(r.Typical), plain(r.Low), plain(r.High))
}

func shares(list []levigate.Share, marks levigate.Marks, column string) *work.Table {
	t := &work.Table{Head: []string{"INCI name", "%", "how it is known"}}
	for _, s := range list {
		t.Rows = append(t.Rows, []string{s.INCI, spread(s.Percent), marks[column+"/"+s.INCI].Mark.String()})
	}
	return t
}

// classesOf lists the classes of a raw material and of all that is declared in it.
func classesOf(m *levigate.Material) []string {
	var out []string
	seen := map[string]bool{}
	add := func(list []string) {
		for _, c := range list {
			if !seen[c] {
				seen[c] = true
				out = append(out, c)
			}
		}
	}
	add(m.Classes)
	for _, s := range m.Declared {
		if s.Substance != nil {
			add(s.Substance.Classes)
		}
	}
	return out
}
