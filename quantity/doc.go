// Package quantity holds the numbers a maker writes and the units they carry.
//
// Two kinds of number meet here. What a person writes and must add up (a
// percentage, a weighed mass, a price) is a Decimal: exact, never rounded by
// the machine. What nature does (activity, density, volume) is a float64.
// Decimal.Float is the one place where the first becomes the second.
//
// Glossary: a unit is the text a figure carries ("g/100 g"); a dimension is
// what may be converted into what (mass into mass, never mass into volume).
package quantity
