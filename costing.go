package levigate

import (
	"time"

	"levigate/quantity"
)

// Costing is what the raw materials of a formula cost. Amounts are decimals of
// CostPlaces places; the lines add up to the total exactly. Labour, pack, tests
// and overhead are not in it.
type Costing struct {
	Formula *Formula
	Day     time.Time // prices known on this day
	Listed  int       // prices on the list
	// Yield is how much of what is weighed arrives as bulk, %; 100 when nobody
	// stated it, which is no product's.
	Yield       quantity.Decimal
	YieldStated bool
	Fill        quantity.Decimal // g in one unit; zero when not asked
	Weighed     quantity.Decimal // g weighed for one unit
	Lines       []CostLine

	// Missing are the lines without a price, counted from 0; Priced is how much of
	// the weight has one, %.
	Missing []int
	Priced  quantity.Decimal
	// Currencies has one entry a currency. With two of them there is no total:
	// no exchange rate is kept.
	Currencies []CurrencyCost

	// The totals are nil unless every line has a price and all are in one
	// currency: a part of the cost is never given as the cost.
	Total *quantity.Decimal // of a kilogram as weighed
	Bulk  *quantity.Decimal // of a kilogram of bulk made
	Unit  *quantity.Decimal // in one unit; nil too when no fill is asked
	Mover *CostMover        // what a dearer raw material does; nil without a total

	Notes []string
}

// CostPlaces is how many places amounts are rounded to: a hundredth of a cent.
const CostPlaces = 4

// CostLine is one line of a formula and what it costs.
type CostLine struct {
	Line    int // of the formula, counted from 0
	Phase   string
	Name    string
	Code    string
	Percent quantity.Decimal
	Grams   quantity.Decimal // in a kilogram as weighed
	InUnit  quantity.Decimal // g weighed for one unit, rounded; zero when no fill is asked
	Price   *Price           // nil when missing
	Landed  quantity.Decimal // a kilogram of the raw material, rounded
	Cost    quantity.Decimal // in a kilogram as weighed, rounded
	Share   *quantity.Decimal
	Notes   []string
}

// CurrencyCost is what the lines priced in one currency come to.
type CurrencyCost struct {
	Currency string
	Lines    []int // counted from 0
	Sum      quantity.Decimal
	Priced   quantity.Decimal // % of the weight
}

// CostMover is the raw material whose price moves the cost most.
type CostMover struct {
	Lines   []int // counted from 0
	Name    string
	Percent quantity.Decimal // by how much dearer
	Bulk    quantity.Decimal // more for a kilogram of bulk
	Unit    quantity.Decimal // more in one unit
}

// Currency is the one currency of all prices; empty when there are two, or none.
func (c *Costing) Currency() string {
	if len(c.Currencies) == 1 {
		return c.Currencies[0].Currency
	}
	return ""
}
