package refdata

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	"levigate"
	"levigate/cite"
)

// Isotherm finds a water isotherm by its row's name ("glycerol", "kaolin").
// The value is shared: read it, do not write it.
func Isotherm(name string) (*levigate.Isotherm, bool) {
	iso, ok := isotherms().byName[name]
	return iso, ok
}

// Isotherms lists every isotherm, solutes first, then powders, then oils.
func Isotherms() []*levigate.Isotherm { return slices.Clone(isotherms().list) }

type isothermIndex struct {
	list   []*levigate.Isotherm
	byName map[string]*levigate.Isotherm
}

var isotherms = sync.OnceValue(func() isothermIndex {
	x := isothermIndex{byName: map[string]*levigate.Isotherm{}}
	for _, part := range []struct {
		table string
		read  func(*isothermRow, *levigate.Isotherm)
	}{
		{"isotherms/solutes", (*isothermRow).solute},
		{"isotherms/powders", (*isothermRow).powder},
		{"isotherms/oils", (*isothermRow).oil},
	} {
		for _, r := range mustOpen(part.table).Rows {
			row := &isothermRow{Row: r}
			iso := row.common()
			part.read(row, iso)
			if row.err == nil && x.byName[iso.Name] != nil {
				row.err = fmt.Errorf("%s: %q stands twice", r.At(), iso.Name)
			}
			if row.err != nil {
				panic("refdata: " + row.err.Error())
			}
			x.byName[iso.Name] = iso
			x.list = append(x.list, iso)
		}
	}
	return x
})

// isothermRow reads one row and keeps its first fault.
type isothermRow struct {
	Row
	err error
}

func (r *isothermRow) number(column string) float64 {
	v, err := r.Number(column)
	r.keep(err)
	return v
}

func (r *isothermRow) optional(column string) float64 {
	v, err := r.Optional(column)
	r.keep(err)
	return v
}

func (r *isothermRow) keep(err error) {
	if err != nil && r.err == nil {
		r.err = err
	}
}

// common reads what all three tables have.
func (r *isothermRow) common() *levigate.Isotherm {
	iso := &levigate.Isotherm{Name: r.Text("name"), Basis: r.Text("basis"), Ions: 1}
	grade, err := cite.ParseGrade(r.Text("grade"))
	r.keep(err)
	iso.Grade = grade
	if !slices.Contains([]string{"measured", "norrish", "unifac", "relative", "assumed"}, iso.Basis) {
		r.keep(fmt.Errorf("%s: basis %q is not known", r.At(), iso.Basis))
	}
	for _, key := range strings.Fields(r.Text("sources")) {
		if _, ok := cite.Find(key); !ok {
			r.keep(fmt.Errorf("%s: source %q is not in the bibliography", r.At(), key))
		}
		iso.Sources = append(iso.Sources, cite.Ref{Key: key})
	}
	if len(iso.Sources) == 0 {
		r.keep(fmt.Errorf("%s: a row needs a source", r.At()))
	}
	return iso
}

func (r *isothermRow) solute(iso *levigate.Isotherm) {
	iso.Model = levigate.Model(r.Text("model"))
	iso.MolarMass, iso.Ions = r.number("molar_mass"), r.number("ions")
	iso.Slope = r.optional("slope")
	switch iso.Model {
	case levigate.FloryHuggins:
		iso.R, iso.Chi = r.number("r"), r.number("chi")
	case levigate.Pitzer:
		iso.Beta0, iso.Beta1, iso.CPhi = r.number("beta0"), r.number("beta1"), r.number("cphi")
		iso.MaxMolality = r.number("max_molality")
	default:
		r.keep(fmt.Errorf("%s: model %q is not one of a solute", r.At(), iso.Model))
	}
	iso.Saturation, iso.SatSlope = r.optional("saturation"), r.optional("sat_slope")
	iso.Down, iso.Up = r.number("down"), r.number("up")
	iso.FitLow, iso.Grow = r.number("fit_low"), r.number("grow")
	iso.TLow, iso.THigh = r.number("t_low"), r.number("t_high")
}

func (r *isothermRow) powder(iso *levigate.Isotherm) {
	iso.Model = levigate.Model(r.Text("model"))
	switch iso.Model {
	case levigate.GAB:
		iso.M0, iso.C, iso.K = r.number("m0"), r.number("c"), r.number("k")
	case levigate.Points:
		for _, pair := range strings.Fields(r.Text("points")) {
			a, w, _ := strings.Cut(pair, ":")
			at, err := strconv.ParseFloat(a, 64)
			r.keep(err)
			holds, err := strconv.ParseFloat(w, 64)
			r.keep(err)
			iso.At, iso.Holds = append(iso.At, at), append(iso.Holds, holds)
		}
	default:
		r.keep(fmt.Errorf("%s: model %q is not one of a powder", r.At(), iso.Model))
	}
	iso.InPolyol = levigate.Range{Typical: r.number("in_polyol"), Low: r.number("in_polyol_low"), High: r.number("in_polyol_high")}
	iso.Relative = r.number("relative")
	iso.TLow, iso.THigh = r.number("t_low"), r.number("t_high")
	iso.FitLow = r.number("a_low")
}

func (r *isothermRow) oil(iso *levigate.Isotherm) {
	iso.Model = levigate.Linear
	// The table is in g/100 g, as people speak of it.
	iso.AtOne = levigate.Range{Typical: r.number("at_one") / 100, Low: r.number("at_one_low") / 100, High: r.number("at_one_high") / 100}
	iso.Enthalpy = r.number("enthalpy")
	iso.Relative = (iso.AtOne.High - iso.AtOne.Low) / 2 / iso.AtOne.Typical
	iso.TLow, iso.THigh = 25, 25
}
