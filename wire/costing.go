package wire

import (
	"time"

	"levigate"
	"levigate/quantity"
)

// CostingSchema names this edition of the costing.
const CostingSchema = "levigate/costing/1"

// Costing is what the raw materials of a formula cost. Amounts are exact
// decimals in the currency; the lines' costs add up to the total. Total, bulk and
// unit are null unless every line has a price and all are in one currency.
type Costing struct {
	Schema     string            `json:"schema"`
	File       string            `json:"file"`
	Prices     string            `json:"prices"` // the price list's file
	Made       Made              `json:"made"`
	Formula    Formula           `json:"formula"`
	Day        string            `json:"day"`          // prices known on it count
	Listed     int               `json:"listed"`       // prices on the list
	Yield      quantity.Decimal  `json:"yield"`        // bulk in % of what is weighed
	Stated     bool              `json:"yield-stated"` // false: 100 was taken for want of one
	Fill       *quantity.Decimal `json:"fill"`         // g in one unit; null when not asked
	Weighed    *quantity.Decimal `json:"weighed"`      // g weighed for one unit
	Currency   *string           `json:"currency"`     // null with two, or none
	Total      *quantity.Decimal `json:"total"`        // of a kilogram as weighed
	Bulk       *quantity.Decimal `json:"bulk"`         // of a kilogram of bulk
	Unit       *quantity.Decimal `json:"unit"`         // in one unit
	Priced     quantity.Decimal  `json:"priced"`       // % of the weight that has a price
	Missing    []int             `json:"missing"`      // lines without one, from 1
	Currencies []CurrencyCost    `json:"currencies"`
	Mover      *CostMover        `json:"mover"`
	Lines      []CostLine        `json:"lines"`
	Notes      []string          `json:"notes"`
}

// CostLine is one line and its price. Line counts from 1.
type CostLine struct {
	Line     int               `json:"line"`
	Phase    string            `json:"phase"`
	Material string            `json:"material"`
	Code     string            `json:"code"`
	Percent  quantity.Decimal  `json:"percent"`
	Grams    quantity.Decimal  `json:"grams"`   // in a kilogram as weighed
	InUnit   *quantity.Decimal `json:"in-unit"` // g weighed for one unit, rounded
	Price    *Price            `json:"price"`   // null when missing
	Cost     *quantity.Decimal `json:"cost"`    // in a kilogram as weighed; null when the price is missing
	Share    *quantity.Decimal `json:"share"`   // % of the total; null without one
	Notes    []string          `json:"notes"`
}

// Price is the price that counts for a line, as it stands on the list.
type Price struct {
	Material string            `json:"material"` // as typed on the list
	Line     int               `json:"line"`     // of the list
	Paid     quantity.Decimal  `json:"paid"`
	Freight  *quantity.Decimal `json:"freight"` // null when not written
	Other    quantity.Decimal  `json:"other"`
	Currency string            `json:"currency"`
	Pack     string            `json:"pack"`   // as typed
	Grams    quantity.Decimal  `json:"grams"`  // in the pack, rounded
	Landed   quantity.Decimal  `json:"landed"` // a kilogram, rounded
	Date     string            `json:"date"`
	Old      bool              `json:"old"` // over a year on the day asked
	Supplier string            `json:"supplier"`
	Notes    string            `json:"notes"`
}

// CurrencyCost is what the lines priced in one currency come to; Lines count
// from 1.
type CurrencyCost struct {
	Currency string           `json:"currency"`
	Lines    []int            `json:"lines"`
	Sum      quantity.Decimal `json:"sum"`
	Priced   quantity.Decimal `json:"priced"`
}

// CostMover is the raw material whose price moves the cost most.
type CostMover struct {
	Lines    []int             `json:"lines"`
	Material string            `json:"material"`
	Percent  quantity.Decimal  `json:"percent"` // by how much dearer
	Bulk     quantity.Decimal  `json:"bulk"`    // more for a kilogram of bulk
	Unit     *quantity.Decimal `json:"unit"`    // more in one unit
}

// CostingOf turns a costing into JSON's shape.
func CostingOf(c *levigate.Costing, file, prices string, made Made) Costing {
	out := Costing{
		Schema: CostingSchema, File: file, Prices: prices, Made: made, Formula: formulaOf(c.Formula),
		Day: c.Day.Format(time.DateOnly), Listed: c.Listed, Yield: c.Yield, Stated: c.YieldStated,
		Fill: stated(c.Fill), Weighed: stated(c.Weighed), Total: c.Total, Bulk: c.Bulk, Unit: c.Unit,
		Priced: c.Priced, Missing: fromOne(c.Missing), Notes: list(c.Notes),
		Currencies: each(c.Currencies, func(x *levigate.CurrencyCost) CurrencyCost {
			return CurrencyCost{x.Currency, fromOne(x.Lines), x.Sum, x.Priced}
		}),
		Lines: each(c.Lines, func(l *levigate.CostLine) CostLine { return costLineOf(c, l) }),
	}
	if in := c.Currency(); in != "" {
		out.Currency = &in
	}
	if m := c.Mover; m != nil {
		out.Mover = &CostMover{Lines: fromOne(m.Lines), Material: m.Name, Percent: m.Percent, Bulk: m.Bulk}
		if !c.Fill.IsZero() {
			out.Mover.Unit = &m.Unit
		}
	}
	return out
}

func costLineOf(c *levigate.Costing, l *levigate.CostLine) CostLine {
	out := CostLine{Line: l.Line + 1, Phase: l.Phase, Material: l.Name, Code: l.Code, Percent: l.Percent, Grams: l.Grams,
		Share: l.Share, Notes: list(l.Notes)}
	if !c.Fill.IsZero() {
		out.InUnit = &l.InUnit
	}
	p := l.Price
	if p == nil {
		return out
	}
	out.Cost = &l.Cost
	out.Price = &Price{Material: p.Material, Line: p.Place.Line, Paid: p.Paid, Other: p.Other, Currency: p.Currency, Pack: p.Pack,
		Grams: quantity.Round(p.Grams, quantity.MaxDecimals), Landed: l.Landed, Date: p.Date.Format(time.DateOnly), Old: p.Old(c.Day),
		Supplier: p.Supplier, Notes: p.Notes}
	if p.FreightStated {
		out.Price.Freight = &p.Freight
	}
	return out
}
