package main

import (
	"levigate/calc/water"
	"levigate/refdata"
)

// A plan says how the isotherm of one solute is made: from which tables, with
// which error given to a row of each, what is kept aside and never fitted, and
// how wide the band is at least. It is where judgement stands, in the open.
type plan struct {
	name      string
	molarMass float64
	ions      float64 // 0 counts as 1

	// Flory-Huggins. size fixes R; 0 fits it, from start on. slope fits the
	// change of χ with 1/T; like takes χ and its change from another solute.
	//
	// start matters: a small R with a negative χ and a larger R with a positive
	// one draw nearly the same curve. The two families meet in a fold at χ = 0,
	// where R and χ move the curve alike, and a search does not cross it. Start
	// at the size of the molecule, on the side where R means what it says.
	size, start float64
	slope       bool
	like        string

	// Pitzer, when molality is not 0.
	salt     water.Salt
	molality float64

	// fit gives the tables to fit and the standard error of a row, in
	// activity; with restricts them to mixtures with that partner, only to the
	// points it accepts. norrish adds points made from a constant.
	fit map[string]float64
	// within lets a recalled table's rows lie that far off without a penalty:
	// they are printed in whole per cents, so a curve inside is as good as one
	// through them. Beyond it they pull hard.
	within map[string]float64
	// anyTemperature takes points from outside the range isotherms are stated
	// for, where there are none inside.
	anyTemperature bool
	with           string
	only           func(refdata.Point) bool
	norrish        norrish
	aside          []string                 // whole tables, or what only or with leave of a fitted one
	doubt          func(refdata.Point) bool // points neither fitted nor judged by; the note says why

	band  band
	basis string // measured, norrish, unifac, relative, assumed
	grade string
	cites []string // besides the tables
	note  string
}

// norrish is a published constant, used from pure water down to low.
type norrish struct {
	k, low, sigma float64
}

// band is the least half-width down and up; low is where the fitted range
// ends, 0 for the lowest activity fitted; grow what every unit below it adds.
type band struct {
	down, up, low, grow float64
}

// The standard errors given to the rows. Handbook freezing points are
// smoothed, so theirs is a guess at their bias; a recalled table is printed in
// whole per cents.
const (
	isopiesticError = 0.0005
	osmometryError  = 0.0005
	handbookError   = 0.001
	osmoticError    = 0.001
	digitisedError  = 0.003
	hygrometerError = 0.005
	pressureError   = 0.01
	sorptionError   = 0.02
)

// The bands at least: well measured, measured near pure water only, and not
// measured at all.
var (
	wellMeasured = band{down: 0.005, up: 0.005, grow: 0.12}
	diluteOnly   = band{down: 0.008, up: 0.008, grow: 0.12}
	unmeasured   = band{down: 0.04, up: 0.04, low: 0.75, grow: 0.10}
)
