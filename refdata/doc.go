// Package refdata holds the embedded reference tables and finds things in
// them. It returns the root package's types.
//
// One table is one .tsv: a card, the lines that start with #, then a heading
// line and the rows. The card says what the table is, where it is from, in
// which units, who keyed it, how (read or from memory) and under what licence.
// A card without a licence is refused. Where rows of one table differ in origin, the table has a column
// "from" with a key of the bibliography, or cells carry their own mark (see
// Cell).
//
// Tables are read once, when first asked for.
package refdata
