// Package levigate is what a maker would say: formula, line, raw material,
// substance, reading, finding. It knows no files, databases or screens; those
// are adapters around it (formulafile, internal/library, internal/assess,
// wire, internal/api).
//
// The way of the data is always forwards: formula, composition, figures,
// findings, papers. No step reaches back.
//
// Glossary: a raw material is what is bought and weighed; a substance is what
// is truly in it; a line is a raw material at a percentage in a phase; q.s.
// is the line that fills up to 100.
package levigate
