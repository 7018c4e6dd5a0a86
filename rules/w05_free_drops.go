package rules

import (
	"levigate"
	"levigate/cite"
	"levigate/work"
)

// wetFingerRoom is the room a small tin needs to dissolve what one wet finger
// brings: 0.1 g into 10 g. A judgement of this project: 0.02 to 0.1 g a use is
// trade practice.
const wetFingerRoom = 1.0 // g per 100 g

var _ = register(Rule{
	ID:    "W05",
	Name:  "free-drops",
	Title: "Almost no room for water in the oils",
	Why: "Oils dissolve a few tenths of a gram of water per 100 g, less when cold. What is beyond that stays as free drops, " +
		"and a free drop has an activity of 1 however dry the product around it: microbes do not meet the average. " +
		"A balm has no water activity of its whole that could stand against this.",
	Since:    "0.1",
	Severity: levigate.Warn,
	Sources:  []cite.Ref{{Key: "oil-water-anchors"}, {Key: "yang2020"}, {Key: "levigate-judgement"}},
	Compares: Banded,
	Messages: map[string]Message{
		"small": {
			Text: "Oil surrounds everything, and the oils have room for {room} g of water per 100 g. A wet finger brings 0.02 to 0.1 g, which may stay as a free drop at activity 1.",
			Help: "keep water out: a pack no finger goes into, dry tins and tools, lids on when cold",
		},
		"cannot-tell": {
			Text:  "Oil surrounds everything, and the oils have room for {room} g of water per 100 g. Whether a wet finger's 0.1 g dissolves in a small tin cannot be told; what does not stays as a free drop at activity 1.",
			Help:  "keep water out until it is measured",
			Needs: "the water a weighed sample dissolves after a week over water at {temperature:0} °C, by drying or Karl Fischer",
		},
		"maybe-already": {
			Text:  "Oil surrounds everything. Whether it already holds more water than the oils dissolve cannot be told: {dissolved} g of {capacity} g per 100 g; what is too much stays as free drops at activity 1.",
			Help:  "dry what brings the water, the grains before the oils, and keep water out until it is measured",
			Needs: "the water of the raw material that brings most of it, by drying",
		},
		"already": {
			Text: "Oil surrounds everything and holds {by} g more water per 100 g than the oils dissolve ({dissolved} g of {capacity} g): free drops at activity 1 are to be expected.",
			Help: "dry the powders and waxes, or leave out what brings the water",
		},
	},
	Check: func(s *Subject, r *Report) {
		room := s.Figure("water.oil-room")
		if s.Continuous != levigate.OilContinuous {
			return
		}
		n := Note{At: []string{atFigure("water.oil-room")}, Args: Args{}}
		switch dissolved, capacity := s.Figure("water.oil-dissolved"), s.Figure("water.oil-capacity"); {
		case room.Against(0) == work.Below && dissolved != nil && capacity != nil:
			n.Say = "already"
			n.Args["by"], n.Args["dissolved"], n.Args["capacity"] = bandOf(room).turned(), bandOf(dissolved), bandOf(capacity)
			r.Broken(n)
		case room.Against(0) == work.CannotTell && room.Low <= -hiddenWorthSaying && dissolved != nil && capacity != nil:
			n.Say, n.Level = "maybe-already", levigate.Advice
			n.Args["dissolved"], n.Args["capacity"] = bandOf(dissolved), bandOf(capacity)
			r.CannotTell(n)
		case room.Against(wetFingerRoom) == work.Below:
			n.Say, n.Level = "small", levigate.Advice
			n.Args["room"] = bandOf(room)
			r.Broken(n)
		case room.Against(wetFingerRoom) == work.CannotTell:
			n.Say, n.Level = "cannot-tell", levigate.Advice
			n.Args["room"], n.Args["temperature"] = bandOf(room), s.Conditions.Temperature
			r.CannotTell(n)
		}
	},
	Examples: []Example{
		{
			Name:  "a cuticle balm",
			Given: sheet(oily(), figure("water.oil-room", 0.21, 0.02, 0.50)),
			Want: "W05 advice: Oil surrounds everything, and the oils have room for 0.2 (0.0–0.5) g of water per 100 g. A wet finger brings 0.02 to 0.1 g, which may stay as a free drop at activity 1.\n" +
				"  help: keep water out: a pack no finger goes into, dry tins and tools, lids on when cold\n" +
				"  at: figures/water.oil-room\n",
			Shows: Under,
		},
		{
			Name: "a balm filled with damp starch",
			Given: sheet(oily(), figure("water.oil-dissolved", 1.30, 1.10, 1.50), figure("water.oil-capacity", 0.29, 0.14, 0.59),
				figure("water.oil-room", -1.01, -1.26, -0.64)),
			Want: "W05 warn: Oil surrounds everything and holds 1.0 (0.6–1.3) g more water per 100 g than the oils dissolve (1.3 (1.1–1.5) g of 0.29 (0.14–0.59) g): free drops at activity 1 are to be expected.\n" +
				"  help: dry the powders and waxes, or leave out what brings the water\n" +
				"  at: figures/water.oil-room\n",
		},
		{
			Name:  "hardly any room, or none",
			Given: sheet(oily(), figure("water.oil-room", 0.01, -0.01, 0.06)),
			Want: "W05 advice: Oil surrounds everything, and the oils have room for 0.01 (−0.01 to 0.06) g of water per 100 g. A wet finger brings 0.02 to 0.1 g, which may stay as a free drop at activity 1.\n" +
				"  help: keep water out: a pack no finger goes into, dry tins and tools, lids on when cold\n" +
				"  at: figures/water.oil-room\n",
		},
		{
			Name: "a scrub of sea salt nobody weighed dry",
			Given: sheet(oily(), figure("water.oil-dissolved", 0.02, 0.01, 1.70), figure("water.oil-capacity", 0.06, 0.03, 0.11),
				figure("water.oil-room", 0.04, -1.6, 0.5)),
			Want: "W05 advice, cannot tell: Oil surrounds everything. Whether it already holds more water than the oils dissolve cannot be told: " +
				"0.02 (0.01–1.70) g of 0.06 (0.03–0.11) g per 100 g; what is too much stays as free drops at activity 1.\n" +
				"  help: dry what brings the water, the grains before the oils, and keep water out until it is measured\n" +
				"  needs: the water of the raw material that brings most of it, by drying\n" +
				"  at: figures/water.oil-room\n",
		},
		{
			Name:  "mostly lanolin and castor oil",
			Given: sheet(oily(), figure("water.oil-room", 0.9, 0.4, 2.1)),
			Want: "W05 advice, cannot tell: Oil surrounds everything, and the oils have room for 0.9 (0.4–2.1) g of water per 100 g. " +
				"Whether a wet finger's 0.1 g dissolves in a small tin cannot be told; what does not stays as a free drop at activity 1.\n" +
				"  help: keep water out until it is measured\n" +
				"  needs: the water a weighed sample dissolves after a week over water at 25 °C, by drying or Karl Fischer\n" +
				"  at: figures/water.oil-room\n",
			Shows: Straddles,
		},
		{Name: "room for a finger, to the last digit", Given: sheet(oily(), figure("water.oil-room", 1, 1, 1)), Shows: On},
		{Name: "a lanolin salve that takes up water", Given: sheet(oily(), figure("water.oil-room", 2.0, 1.2, 3.0)), Shows: Over},
		{Name: "a gel, whose oil is inside", Given: sheet(figure("water.oil-room", 0.2, 0.0, 0.5))},
	},
})
