// Package view turns a formula check into what a person is shown of it: the
// words and marks of the margin, the figures at the head of a sheet, and the
// charts. The page and the answers for other programs say the same because both
// take it from here. Nothing here computes a figure.
package view
