// Package render writes figures and their workings for people: as text for a
// terminal or a note, and as a fragment of a page. Both say the same things in
// the same order: value, band, sentence, how it came about, what makes the
// band, which reading would replace it, sources. The JSON form is in wire,
// which everyone reads.
//
// A figure outside a working shows no more digits than its band allows; inside
// one it may show more, since there someone wants to check the arithmetic.
//
// Glossary: a block is one figure with everything one may ask of it; a cell is
// one field of a table.
package render
