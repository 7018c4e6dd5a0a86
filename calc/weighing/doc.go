// Package weighing holds what a balance can weigh and how well: the minimum
// weight, the smallest batch a line can be weighed for, what a pre-mix
// delivers.
//
// Glossary: d is the scale interval, the smallest step the balance shows; s is
// its repeatability, the standard deviation of ten weighings of one weight; the
// tolerance is by how much a line may be off, in % of itself. Uncertainties are
// at k = 2, about nineteen times in twenty.
package weighing
