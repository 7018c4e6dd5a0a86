// Package chart draws one line with its band and its marks as an SVG image.
//
// A chart is drawn for the width it gets and never scaled, so that its text
// stays 13 px. There is no legend: names stand at what they name. Gridlines are
// horizontal hairlines. Colours are the page's own custom properties, so that a
// chart follows light, dark and print by itself; every hue has a second cue in
// the page, and the band is a tint of its line.
//
// The same Spec always gives the same bytes. All text is escaped here.
//
// Glossary: a limit is a named vertical line; a stretch is a named range along
// x; a bracket is a named range along y at one x; a whisker is a single value
// with its band on an axis of its own.
package chart
