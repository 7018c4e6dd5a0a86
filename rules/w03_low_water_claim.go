package rules

import (
	"levigate"
	"levigate/cite"
	"levigate/work"
)

// mostlyWater is the water from which a raw material counts as water by
// another name: hydrosols, juices, thin solutions.
const mostlyWater = 80.0 // g per 100 g

var _ = register(Rule{
	ID:    "W03",
	Name:  "low-water-claim",
	Title: "The claim of low water does not match the formula",
	Why: "\"No water added\" is no statement about water: a hydrosol, a juice or a gel of aloe leaf is nearly all water, " +
		"and clay, honey and diluted glycerin bring more. A claim of low water has to rest on the water activity, measured.",
	Since:    "0.1",
	Severity: levigate.Warn,
	After:    []string{"C02"},
	Sources:  []cite.Ref{{Key: "iso29621"}, {Key: "levigate-judgement"}},
	Limits:   []string{"limits/criteria " + lowRisk},
	Compares: Banded,
	Messages: map[string]Message{
		"above": {
			Text: "The sheet claims low water, but its water activity {activity} is above {limit:2}.",
			Help: "drop the claim, or take water out: 100 g hold {held:1} g",
		},
		"above-lines": {
			Text: "The sheet claims low water, but its water activity {activity} is above {limit:2}. Water by another name: {most:1 g}.",
			Help: "drop the claim, or take these lines out: 100 g hold {held:1} g",
		},
		"cannot-tell": {
			Text:  "The sheet claims low water; its water activity {activity} cannot be told from {limit:2}.",
			Help:  "measure before the claim is made",
			Needs: "a water activity of this version, closed cup, {temperature:0} °C, after it has rested",
		},
		"drops": {
			Text: "The sheet claims low water, but holds {by} g more water per 100 g than its oils dissolve: free drops at activity 1.",
			Help: "drop the claim, or take water out: 100 g hold {held:1} g",
		},
		"lines": {
			Text: "The sheet claims low water, and is made with water by another name: {most:1 g}.",
			Help: "write it as water, or leave it out; plain water in its place is the same to the product and spoils less easily",
		},
	},
	Check: func(s *Subject, r *Report) {
		if !s.Formula.Claimed("low-water") {
			return
		}
		f, limit := s.Activity(), criterion(lowRisk).Activity
		wet := s.Lines(func(_ int, m *levigate.Material) bool { return m.Water.Typical >= mostlyWater && !isPlainWater(m) })
		var most []Part
		for _, i := range wet {
			most = append(most, Part{s.Name(i), s.Grams(i) * s.Formula.Lines[i].Match.Material.Water.Typical / 100})
		}
		switch f.Against(limit) {
		case work.Above:
			n := Note{Say: "above", At: append([]string{atFigure(f.ID)}, atLines(wet)...),
				Args: Args{"activity": bandOf(f), "limit": limit, "held": s.Water()}}
			if len(most) > 0 {
				n.Say, n.Args["most"] = "above-lines", most
			}
			r.Broken(n)
		case work.CannotTell:
			r.CannotTell(Note{Say: "cannot-tell", At: []string{atFigure(f.ID)},
				Args: Args{"activity": bandOf(f), "limit": limit, "temperature": s.Conditions.Temperature}})
		default:
			if room := s.Figure("water.oil-room"); room != nil && room.State != work.Missing && room.High < 0 {
				r.Broken(Note{Say: "drops", At: []string{atFigure(room.ID)}, Args: Args{"by": bandOf(room).turned(), "held": s.Water()}})
			}
			if len(most) > 0 {
				r.Broken(Note{Say: "lines", At: atLines(wet), Args: Args{"most": most}})
			}
		}
	},
	Examples: []Example{
		{
			Name: "drops in a balm",
			Given: sheet(claim("low-water"), oily(), missing("water.activity", "oil surrounds everything"),
				figure("water.oil-room", -1.6, -1.9, -1.2), line("2", "Purified water", of("Aqua", 100), water(100))),
			Want: "W03 warn: The sheet claims low water, but holds 1.6 (1.2–1.9) g more water per 100 g than its oils dissolve: free drops at activity 1.\n" +
				"  help: drop the claim, or take water out: 100 g hold 2.0 g\n" +
				"  at: figures/water.oil-room\n",
		},
		{
			Name: "no water added, and 0.85",
			Given: sheet(claim("low-water"), line("19", "Aloe leaf gel", water(98)), line("12", "Honey, runny", water(17.2)),
				activity(0.85, 0.82, 0.87)),
			Want: "W03 warn: The sheet claims low water, but its water activity 0.85 (0.82–0.87) is above 0.75. Water by another name: Aloe leaf gel (18.6 g).\n" +
				"  help: drop the claim, or take these lines out: 100 g hold 20.7 g\n" +
				"  at: figures/water.activity lines/0\n",
			Shows: Over,
		},
		{
			Name:  "a reading of exactly 0.75",
			Given: sheet(claim("low-water"), aqua("25"), activity(0.75, 0.75, 0.75)),
			Want: "W03 warn: The sheet claims low water, but its water activity 0.75 is above 0.75.\n" +
				"  help: drop the claim, or take water out: 100 g hold 25.0 g\n" +
				"  at: figures/water.activity\n",
			Shows: On,
		},
		{
			Name:  "about 0.75",
			Given: sheet(claim("low-water"), line("60", "Honey, runny", water(17.2)), activity(0.74, 0.71, 0.77)),
			Want: "W03 warn, cannot tell: The sheet claims low water; its water activity 0.74 (0.71–0.77) cannot be told from 0.75.\n" +
				"  help: measure before the claim is made\n" +
				"  needs: a water activity of this version, closed cup, 25 °C, after it has rested\n" +
				"  at: figures/water.activity\n",
			Shows: Straddles,
		},
		{
			Name:  "dry by activity, but with hydrosol",
			Given: sheet(claim("low-water"), line("2", "Rose water", water(99)), activity(0.30, 0.28, 0.34)),
			Want: "W03 warn: The sheet claims low water, and is made with water by another name: Rose water (2.0 g).\n" +
				"  help: write it as water, or leave it out; plain water in its place is the same to the product and spoils less easily\n" +
				"  at: lines/0\n",
		},
		{Name: "a claim that the figures bear out", Given: sheet(claim("low-water"), aqua("2"), activity(0.30, 0.28, 0.34)), Shows: Under},
		{Name: "wet and no claim", Given: sheet(aqua("67"), activity(0.98, 0.97, 0.99))},
	},
})
