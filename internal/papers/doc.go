// Package papers makes what is printed, taped in a notebook, kept or sent: PDF
// on A4 or US Letter, black on white. The same content gives the same bytes.
//
// Each paper is a struct of words and numbers, all of them already text, and a
// function that draws it. What a paper says is decided in the first and never in
// the second.
//
// Glossary: a sheet is a paper being drawn; a face is one of its fonts; a row is
// kept on one page, and so are rows that are put down together.
package papers
