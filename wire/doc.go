// Package wire is the JSON everyone sees: the command line, the page and other
// programs. It turns what the program holds into structs with named keys and
// back into nothing else.
//
// Three promises. A key never changes meaning or unit; one that is listed is
// always there. Lines count from 1, in from and at alike, though the program
// counts from 0. A number is finite and keeps all its digits; what has no value
// is null.
//
// Glossary: made says by which program and which data an answer was made; a
// place is where in a formula a finding points ("lines/3", "phases/B",
// "figures/water.activity").
package wire
