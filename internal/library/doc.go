// Package library finds raw materials and substances by name.
//
// Three shelves are searched in order: the formula's own raw materials, the
// workspace's, the embedded ones. On each a name is tried as a code, then as an
// INCI name, then as the raw material's name; last, on the embedded shelf, as a
// US or everyday name of a substance ("Water", "Corn Starch").
//
// Names are compared folded: case, accents, spacing, the kind of dash and
// commas between words make no difference.
package library
