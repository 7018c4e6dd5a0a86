// Package exchange reads what a maker keeps in files of other forms: so far a
// price list, as comma, semicolon or tab separated text.
//
// Such a file comes out of a spreadsheet, and its slips are a spreadsheet's: a
// comma inside a number, a date turned round, a row moved by one cell. All of
// them are reported at once, each with its line, its column and what to do; with
// any there is no list.
package exchange
