package refdata

import (
	"fmt"
	"slices"
	"sync"

	"levigate"
	"levigate/cite"
)

// A table under materials/ joins by being there; it leaves out the columns it
// has no use for.
var materialColumns = []string{
	"code", "name", "form", "belongs", "declared", "dry", "dissolved", "water", "density", "isotherm", "sits", "size_um",
	"oil_absorption", "hlb", "use", "role", "classes", "cautions", "storage", "grade", "source", "notes",
}

// The words a raw material may use. A word outside these is a slip that a rule
// would never find.
var (
	forms    = []levigate.Form{levigate.Liquid, levigate.Crystals, levigate.FinePow, levigate.Grains, levigate.Solid}
	sits     = []levigate.Sits{"", levigate.InOil, levigate.InPolyol, levigate.Grain}
	belongs  = []levigate.Belongs{"", levigate.InWaterPhase, levigate.InOilPhase, levigate.InPowderPhase, levigate.InCoolDown}
	cautions = []string{"acid", "caustic", "dust", "flammable", "hot-wax", "irritant", "oxidiser", "sensitiser"}
	storage  = []string{"closed", "cool", "dark", "dry", "frost-free", "fridge", "upright"}
	roles    = []string{
		"absorbent", "acid", "active", "alkali", "antioxidant", "base", "butter", "chelator", "cleanser", "colour", "conditioner", "emollient",
		"emulsifier", "filler", "fragrance", "humectant", "preservative", "scrub", "solvent", "thickener", "uv-filter", "wax",
	}
)

// ByDefinition is the grade of what a name says by itself: "dry and pure".
const ByDefinition = cite.Reviewed

// Materials lists the embedded raw materials, their substances resolved. They
// are shared: nobody may change them.
func Materials() []*levigate.Material { return materials().list }

// Material finds an embedded raw material by its code, exactly as written.
func Material(code string) (*levigate.Material, bool) {
	m, ok := materials().byCode[code]
	return m, ok
}

type materialSet struct {
	list   []*levigate.Material
	byCode map[string]*levigate.Material
}

var materials = sync.OnceValue(func() materialSet {
	set, err := readMaterials(folder("materials"))
	if err != nil {
		panic("refdata: " + err.Error())
	}
	return set
})

func readMaterials(tables []*Table) (materialSet, error) {
	set := materialSet{byCode: map[string]*levigate.Material{}}
	for _, t := range tables {
		if err := t.allow(materialColumns); err != nil {
			return set, err
		}
		for _, r := range t.Rows {
			m, err := readMaterial(r)
			if err != nil {
				return set, err
			}
			if set.byCode[m.Code] != nil {
				return set, fmt.Errorf("%s: code %s stands twice", r.At(), m.Code)
			}
			set.byCode[m.Code] = m
			set.list = append(set.list, m)
		}
	}
	return set, nil
}

func readMaterial(r Row) (*levigate.Material, error) {
	marks := levigate.Marks{}
	m := &levigate.Material{
		Code: r.Text("code"), Name: r.Text("name"), Origin: levigate.Embedded, Form: levigate.Form(r.word("form", marks)),
		Sits: levigate.Sits(r.word("sits", marks)), Belongs: levigate.Belongs(r.word("belongs", marks)),
		Role: list(r.word("role", marks)), Classes: list(r.word("classes", marks)), Cautions: list(r.word("cautions", marks)),
		Storage: list(r.word("storage", marks)), Dissolved: r.word("dissolved", marks) == "yes",
		Source: r.Text("source"), Marks: marks,
	}
	if m.Code == "" || m.Name == "" {
		return nil, fmt.Errorf("%s: a raw material needs a code and a name", r.At())
	}
	for _, w := range []struct {
		column string
		known  bool
	}{
		{"form", slices.Contains(forms, m.Form)},
		{"sits", slices.Contains(sits, m.Sits)},
		{"belongs", slices.Contains(belongs, m.Belongs)},
		{"storage", within(m.Storage, storage)},
		{"role", within(m.Role, roles)},
		{"cautions", within(m.Cautions, cautions)},
		{"dissolved", m.Dissolved || r.Text("dissolved") == ""},
	} {
		if !w.known {
			return nil, fmt.Errorf("%s: column %s: %q is not a word for it", r.At(), w.column, r.Text(w.column))
		}
	}
	err := marked(r, m.Marks, map[string]*levigate.Range{
		"water": &m.Water, "density": &m.Density, "size_um": &m.Size, "use": &m.Use, "oil_absorption": &m.OilAbsorption,
	})
	if err != nil {
		return nil, err
	}
	if m.HLB, err = r.stated("hlb", m.Marks); err != nil {
		return nil, err
	}
	if m.Declared, err = readShares(r, "declared", m.Marks); err != nil {
		return nil, err
	}
	if m.Dry, err = readShares(r, "dry", m.Marks); err != nil {
		return nil, err
	}
	if len(m.Declared) == 0 {
		return nil, fmt.Errorf("%s: %s is declared as nothing", r.At(), m.Code)
	}
	if m.Grade, err = cite.ParseGrade(r.Text("grade")); err != nil {
		return nil, fmt.Errorf("%s: %w", r.At(), err)
	}
	m.Isotherm, err = isothermOf(r)
	return m, err
}

// readShares reads what a raw material is made up of: "Glycerin: 86.5 c
// trade-practice; Aqua: 13.5 c trade-practice". A share's mark is kept as
// "declared/INCI" or "dry/INCI".
func readShares(r Row, column string, marks levigate.Marks) ([]levigate.Share, error) {
	entries, err := r.names(column, marks)
	if err != nil {
		return nil, err
	}
	var out []levigate.Share
	for _, e := range entries {
		s, ok := Substance(e.Name)
		if !ok {
			return nil, fmt.Errorf("%s: column %s: substance %q is not on file", r.At(), column, e.Name)
		}
		out = append(out, levigate.Share{INCI: e.Name, Substance: s, Percent: e.Range})
	}
	return out, nil
}

func within(words, known []string) bool {
	return !slices.ContainsFunc(words, func(w string) bool { return !slices.Contains(known, w) })
}
