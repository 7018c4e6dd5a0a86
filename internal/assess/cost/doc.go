// Package cost works out what the raw materials of a formula cost, from a list
// of prices: a kilogram as weighed, a kilogram of bulk, one unit.
//
// It is no part of the formula check: it needs prices, and gives amounts and no
// figures. Amounts are exact decimals: each line is rounded once, to a hundredth
// of a cent, and the total is the sum of what is shown. A line without a price, or
// a second currency, leaves no total; a part of the cost is never called the cost.
//
// Glossary: landed is with freight and other charges; as weighed is before
// anything is lost; bulk is what leaves the vessel for filling.
package cost

import _ "levigate/calc/cost" // the methods that say what is done here exactly; a test holds the two together
