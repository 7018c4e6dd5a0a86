// Package sheet stands between a document, which holds what was typed, and a
// formula, which holds what it means. Reading a document is lenient: whatever
// can be read becomes the formula, the rest is named by cell with what is wrong
// and what to do, and nothing that was typed is changed.
//
// The way back gives a document for a formula file, and a formula file for a
// document. What the file has no key for (the function and the note of a line,
// the temperature of a check) stays behind.
package sheet
