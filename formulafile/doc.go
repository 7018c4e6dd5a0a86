// Package formulafile reads and writes the formula file, edition formula/1: a
// small, strict part of YAML in which every fault has a line, a column and
// something to do about it.
//
// The way of a file: its bytes are guarded (size, encoding, tabs), cut into
// tokens, the tokens are checked (no anchors, tags or second document, not too
// deep), parsed to a tree, and the tree is walked by hand, so that each value
// still knows where it stands. Each step reports all it finds; a later step
// runs only on what passed the earlier ones.
//
// What is read is checked for its form only. Whether the percentages come to
// 100, whether a raw material is known and whether a product is lawful are
// questions for others. Three things to know:
//
//   - Numbers are kept as written, exactly, but not their trailing zeros:
//     12.50 is the number 12.5.
//   - isotherm: {like: NAME} becomes an Isotherm with that Name and no Model;
//     whoever holds a library puts the named data in its place.
//   - A tab within a line reads as one space, as do the ends of a text.
//
// Glossary: an entry is a key with its value; a mark is a character that gives
// the file its structure (brackets, commas, colons, dashes, quotes, line ends).
package formulafile
