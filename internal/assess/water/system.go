package water

import (
	"slices"
	"sync"

	"levigate"
	"levigate/calc/water"
	"levigate/internal/assess/part"
	"levigate/refdata"
	"levigate/work"
)

// system is a formula as its water sees it: what holds water, how much there
// is, and which line brought what.
type system struct {
	sheet   *part.Sheet
	celsius float64
	total   float64 // water present, g per 100 g
	sum     water.Sum
	holders []holder
	brought []brought
	heads   []head
	unknown []unknown
	honey   bool
	polyol  bool // a polar liquid with solutes is there to take sites on powders
	own     []own
}

// own is a raw material's own isotherm and what it came to, so that two lines
// of it share one curve.
type own struct{ given, used *levigate.Isotherm }

// holder is one substance that holds water, over all lines that bring it.
type holder struct {
	iso      *levigate.Isotherm
	name     string
	kind     levigate.Kind
	isotherm *work.Cause
	factor   *work.Cause // powders in a polyol
}

// brought is a line's part in a holder.
type brought struct{ line, share, holder int }

// head is the sugar or glycerol head of a surfactant: it holds nothing, but
// the band reaches to what it would hold.
type head struct {
	curve *water.Curve
	grams float64
	cause *work.Cause
}

// unknown is a solute with no isotherm: it holds nothing, and the band reaches
// to its mole fraction.
type unknown struct {
	osmoles float64
	cause   *work.Cause
}

// build collects what holds water. A line's own isotherm, where its raw
// material has one, stands for all of its dry part.
func build(s *part.Sheet) *system {
	y := &system{
		sheet: s, celsius: s.Conditions.Temperature,
		holders: make([]holder, 0, 2*len(s.Lines)),
		brought: make([]brought, 0, 2*len(s.Lines)),
	}
	y.sum.Solution = 1
	y.sum.Holders = make([]water.Holder, 0, 2*len(s.Lines))
	for i := range s.Lines {
		l := &s.Lines[i]
		if l.Opened == nil || l.Grams == 0 {
			continue
		}
		y.total += l.Grams * l.Water.Typical / 100
		y.honey = y.honey || l.Material.Is("honey")
		if iso := y.resolve(l.Material.Isotherm); iso != nil {
			y.add(i, -1, iso, l.Material.Name, l.Grams*(100-l.Water.Typical)/100, crystal(l.Material, iso))
			continue
		}
		for j := range l.Dry {
			share := &l.Dry[j]
			grams := l.Grams * (100 - l.Water.Typical) * share.Percent.Typical / 1e4
			y.open(i, j, share, grams, l.Material)
		}
	}
	for i := range y.holders {
		h, sum := &y.holders[i], &y.sum.Holders[i]
		if isSolute(h.iso) {
			sum.Osmoles = sum.Grams / h.iso.MolarMass * max(h.iso.Ions, 1)
			y.polyol = true
		}
	}
	for i := range y.holders {
		h := &y.holders[i]
		y.sum.Holders[i].Factor = 1
		if y.polyol && h.iso.InPolyol.Known() {
			y.sum.Holders[i].Factor = h.iso.InPolyol.Typical
		}
	}
	return y
}

// open adds one substance of a line.
func (y *system) open(line, share int, s *levigate.Share, grams float64, m *levigate.Material) {
	sub := s.Substance
	switch {
	case sub == nil:
	case sub.Isotherm != nil:
		crystal := crystal(m, sub.Isotherm)
		at := y.add(line, share, sub.Isotherm, sub.INCI, grams, crystal)
		if l := &y.sheet.Lines[line]; crystal && l.Water.Typical >= hydrate {
			y.sum.Holders[at].Bound += l.Grams * l.Water.Typical / 100 * s.Percent.Typical / 100
		}
	case sub.Kind == levigate.Solute:
		y.noData(sub, grams)
	}
	if sub != nil && sub.SugarHead > 0 {
		y.head(sub, grams)
	}
}

func (y *system) add(line, share int, iso *levigate.Isotherm, name string, grams float64, crystal bool) (at int) {
	at = -1
	for i := range y.holders {
		if y.holders[i].iso == iso {
			at = i
			break
		}
	}
	if at < 0 {
		at = len(y.holders)
		kept := keptFor(iso)
		h := holder{iso: iso, name: name, isotherm: &kept.isotherm, factor: &kept.factor, kind: kindOf(iso)}
		y.holders = append(y.holders, h)
		y.sum.Holders = append(y.sum.Holders, water.Holder{Curve: curve(iso, y.celsius)})
	}
	// Beside crystals of it, what arrived dissolved may crystallise too.
	y.sum.Holders[at].Crystal = y.sum.Holders[at].Crystal || crystal
	if y.holders[at].name != name {
		// Several substances share this curve: call it by the curve's name.
		y.holders[at].name = iso.Name
	}
	y.sum.Holders[at].Grams += grams
	y.brought = append(y.brought, brought{line, share, at})
	return at
}

func (y *system) noData(sub *levigate.Substance, grams float64) {
	c := keptUnknown(sub)
	for i := range y.unknown {
		if y.unknown[i].cause == c {
			y.unknown[i].osmoles += osmoles(sub, grams)
			return
		}
	}
	y.unknown = append(y.unknown, unknown{osmoles(sub, grams), c})
}

func osmoles(sub *levigate.Substance, grams float64) float64 {
	if sub.MolarMass == 0 {
		return 0
	}
	return grams / sub.MolarMass
}

func (y *system) head(sub *levigate.Substance, grams float64) {
	like, ok := y.sheet.Library.Substance(sub.HeadLike)
	if !ok || like.Isotherm == nil {
		return
	}
	c := keptHead(sub)
	for i := range y.heads {
		if y.heads[i].cause == c {
			y.heads[i].grams += grams * sub.SugarHead
			return
		}
	}
	y.heads = append(y.heads, head{curve(like.Isotherm, y.celsius), grams * sub.SugarHead, c})
}

// hydrate is the water above which crystals must have it built in, % of the raw
// material: nobody ships sugar or salt that damp. A judgement of this project;
// glucose monohydrate holds 9.1 %, citric acid monohydrate 8.6 %.
const hydrate = 4

// crystal reports whether the raw material brings the substance as crystals.
func crystal(m *levigate.Material, iso *levigate.Isotherm) bool {
	if iso.Saturation == 0 || m.Dissolved {
		return false
	}
	if m.Origin == levigate.OfFormula {
		// A file does not say how its raw materials arrive: a solution holds
		// water, crystals next to none.
		return m.Water.Typical < part.Dampest
	}
	return m.Form == levigate.Crystals || m.Form == levigate.Grains || m.Origin == levigate.Pure
}

func (y *system) resolve(given *levigate.Isotherm) *levigate.Isotherm {
	if given == nil {
		return nil
	}
	for _, o := range y.own {
		if o.given == given {
			return o.used
		}
	}
	used := banded(given)
	y.own = append(y.own, own{given, used})
	return used
}

// banded gives an isotherm that came without a band the band of its kind: what
// was not stated is assumed, never exact.
func banded(iso *levigate.Isotherm) *levigate.Isotherm {
	switch {
	case iso.Model == levigate.GAB && iso.Relative == 0:
		c := *iso
		c.Relative, c.InPolyol = 0.25, levigate.Range{Typical: 1, Low: 0.6, High: 1.25}
		return &c
	case iso.Model == levigate.Linear && iso.AtOne.Low == iso.AtOne.High:
		c := *iso
		c.AtOne = levigate.Range{Typical: iso.AtOne.Typical, Low: iso.AtOne.Typical / 1.5, High: iso.AtOne.Typical * 1.5}
		if c.Enthalpy == 0 {
			c.Enthalpy = oilEnthalpy
		}
		return &c
	}
	return iso
}

// oilEnthalpy is how much more an oil dissolves when warm, as for the oils on
// file, J/mol.
const oilEnthalpy = 16000

func isSolute(iso *levigate.Isotherm) bool {
	return iso.Model == levigate.FloryHuggins || iso.Model == levigate.Pitzer
}

func kindOf(iso *levigate.Isotherm) levigate.Kind {
	switch iso.Model {
	case levigate.FloryHuggins, levigate.Pitzer:
		return levigate.Solute
	case levigate.Linear:
		return levigate.Oil
	}
	return levigate.Powder
}

// at is the system at another temperature, everything else the same.
func (y *system) at(celsius float64) *system {
	z := *y
	z.celsius = celsius
	z.sum.Holders = slices.Clone(y.sum.Holders)
	for i := range z.sum.Holders {
		z.sum.Holders[i].Curve = curve(y.holders[i].iso, celsius)
	}
	return &z
}

type curveKey struct {
	iso     *levigate.Isotherm
	celsius float64
}

var curves sync.Map // curveKey -> *water.Curve

// curve keeps the curves of library rows by temperature; a formula's own
// isotherms are made anew, or the store would grow with every keystroke.
func curve(iso *levigate.Isotherm, celsius float64) *water.Curve {
	key := curveKey{iso, celsius}
	if c, ok := curves.Load(key); ok {
		return c.(*water.Curve)
	}
	c := water.NewCurve(params(iso), celsius)
	if row, _ := refdata.Isotherm(iso.Name); row != iso || !ordinary(celsius) {
		return &c
	}
	kept, _ := curves.LoadOrStore(key, &c)
	return kept.(*water.Curve)
}

// ordinary temperatures are whole degrees in the range of use: a bounded set.
func ordinary(celsius float64) bool {
	return celsius == float64(int(celsius)) && celsius >= -20 && celsius <= 60
}
