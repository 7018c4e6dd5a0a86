// Package weighing makes the weighing list of a formula: grams for a batch on
// the balances at hand, which balance, in how many portions, and what to do
// about a line that is too little to weigh.
//
// It is no part of the formula check: it needs a batch and balances, and gives
// a list and no figures. All masses are exact; only how far a weighing may be
// off is a floating number.
//
// Glossary: the minimum weight is what a balance weighs to within the
// tolerance; a line absorbs when it takes up what rounding the others left over;
// a pre-mix is the line diluted in another of the same formula.
package weighing
