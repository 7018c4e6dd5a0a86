// Package validation holds the isotherms against what others measured.
//
// A method in calc knows no table, so it cannot prove itself on one. The files
// here add those checks to the methods: what was measured, by whom, what the
// program answers, and how far apart the two may stand. The page of checks in
// the documentation is made from them.
//
// Misses are given as the root mean square over a source's points, which a
// single lucky row cannot hide behind; the value wanted is 0 and the tolerance
// is the accuracy asked of the program.
package validation
