// Package cost holds what a product's raw materials cost: a kilogram of one of
// them once it stands on the shelf, of a formula, of the bulk made from it, and
// what is in one unit that can be sold.
//
// Glossary: landed is with freight and all charges, without tax that is got
// back; as weighed is what goes on the balance; bulk is what leaves the vessel
// for filling; the making yield is bulk in % of what was weighed; hold-up is bulk
// that stays in hose and hopper; a fill is the bulk that goes into one unit.
// Money is in any one currency, the same throughout.
package cost
