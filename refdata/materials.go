package refdata

import (
	"fmt"
	"slices"
	"sync"

	"levigate"
	"levigate/cite"
)

var materialTables = []string{"materials/liquids", "materials/oils", "materials/powders", "materials/others"}

// The words a raw material may use. A word outside these is a slip that a rule
// would never find.
var (
	forms    = []levigate.Form{levigate.Liquid, levigate.Crystals, levigate.FinePow, levigate.Grains, levigate.Solid}
	sits     = []levigate.Sits{"", levigate.InOil, levigate.InPolyol, levigate.Grain}
	cautions = []string{"acid", "caustic", "dust", "flammable", "hot-wax", "irritant"}
	roles    = []string{
		"absorbent", "acid", "active", "alkali", "antioxidant", "base", "butter", "cleanser", "colour", "conditioner", "emollient",
		"emulsifier", "filler", "fragrance", "humectant", "preservative", "scrub", "solvent", "thickener", "wax",
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
	tables := make([]*Table, len(materialTables))
	for i, name := range materialTables {
		tables[i] = mustOpen(name)
	}
	set, err := readMaterials(tables, mustOpen("materials/declared"), mustOpen("materials/dry"))
	if err != nil {
		panic("refdata: " + err.Error())
	}
	return set
})

func readMaterials(tables []*Table, declared, dry *Table) (materialSet, error) {
	set := materialSet{byCode: map[string]*levigate.Material{}}
	for _, t := range tables {
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
	if err := readShares(declared, set, "declared", func(m *levigate.Material) *[]levigate.Share { return &m.Declared }); err != nil {
		return set, err
	}
	if err := readShares(dry, set, "dry", func(m *levigate.Material) *[]levigate.Share { return &m.Dry }); err != nil {
		return set, err
	}
	for _, m := range set.list {
		if len(m.Declared) == 0 {
			return set, fmt.Errorf("%s.tsv: %s is declared as nothing", declared.Name, m.Code)
		}
	}
	return set, nil
}

func readMaterial(r Row) (*levigate.Material, error) {
	m := &levigate.Material{
		Code: r.Text("code"), Name: r.Text("name"), Origin: levigate.Embedded, Form: levigate.Form(r.Text("form")),
		Sits: levigate.Sits(r.Text("sits")), Role: list(r.Text("role")), Classes: list(r.Text("classes")),
		Cautions: list(r.Text("cautions")), Dissolved: r.Text("dissolved") == "yes",
		Source: r.Text("source"), Marks: levigate.Marks{},
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
		{"role", within(m.Role, roles)},
		{"cautions", within(m.Cautions, cautions)},
		{"dissolved", m.Dissolved || r.Text("dissolved") == ""},
	} {
		if !w.known {
			return nil, fmt.Errorf("%s: column %s: %q is not a word for it", r.At(), w.column, r.Text(w.column))
		}
	}
	err := marked(r, m.Marks, map[string]*levigate.Range{"water": &m.Water, "density": &m.Density, "size_um": &m.Size})
	if err != nil {
		return nil, err
	}
	if m.Grade, err = cite.ParseGrade(r.Text("grade")); err != nil {
		return nil, fmt.Errorf("%s: %w", r.At(), err)
	}
	m.Isotherm, err = isothermOf(r)
	return m, err
}

// readShares reads a table of material, inci, percent into the raw materials.
// A share's mark is kept as "declared/INCI" or "dry/INCI".
func readShares(t *Table, set materialSet, what string, of func(*levigate.Material) *[]levigate.Share) error {
	for _, r := range t.Rows {
		m := set.byCode[r.Text("material")]
		if m == nil {
			return fmt.Errorf("%s: no raw material has the code %q", r.At(), r.Text("material"))
		}
		inci := r.Text("inci")
		s, ok := Substance(inci)
		if !ok {
			return fmt.Errorf("%s: substance %q is not on file", r.At(), inci)
		}
		p, from, err := r.Cell("percent")
		if err != nil {
			return err
		}
		m.Marks[what+"/"+inci] = from
		shares := of(m)
		*shares = append(*shares, levigate.Share{INCI: inci, Substance: s, Percent: p})
	}
	return nil
}

func within(words, known []string) bool {
	return !slices.ContainsFunc(words, func(w string) bool { return !slices.Contains(known, w) })
}
