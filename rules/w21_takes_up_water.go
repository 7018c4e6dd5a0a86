package rules

import (
	"levigate"
	"levigate/cite"
	"levigate/work"
)

// leastUptake keeps dry things quiet that take up next to nothing, g per 100 g.
const leastUptake = 1.0

var _ = register(Rule{
	ID:    "W21",
	Name:  "takes-up-water",
	Title: "Left open, it more than doubles its water",
	Why: "A product held together by a polyol heads for the humidity of the air around it: at 60 % it goes to an activity of 0.60, in a bathroom beyond. " +
		"What was low in water when it was made is low in water as long as it is closed. The surface gets there in minutes, the middle in weeks.",
	Since:    "0.1",
	Severity: levigate.Advice,
	After:    []string{"C02"},
	Sources:  []cite.Ref{{Key: "levigate-judgement"}},
	Compares: Banded,
	Messages: map[string]Message{
		"more": {
			Text: "100 g hold {held:1} g of water; left open in air of 60 % humidity they would come to rest after taking up {room} g more.",
			Help: "lid on between steps and in use, note the room's humidity on making and filling days, and weigh an open dish to see how fast it goes",
		},
		"cannot-tell": {
			Text:  "100 g hold {held:1} g of water; whether they would take up more than that in air of 60 % humidity ({room} g) cannot be told.",
			Help:  "keep the lid on until it is known",
			Needs: "the weight of an open dish over two weeks at 60 % humidity",
		},
	},
	Check: func(s *Subject, r *Report) {
		room, held := s.Figure("water.reserve"), s.Water()
		if s.Continuous != levigate.PolarContinuous || room == nil || room.Low < leastUptake {
			return
		}
		n := Note{At: []string{atFigure(room.ID)}, Args: Args{"held": held, "room": bandOf(room)}}
		switch room.Against(held) {
		case work.Above:
			n.Say = "more"
			r.Broken(n)
		case work.CannotTell:
			n.Say = "cannot-tell"
			r.CannotTell(n)
		}
	},
	Examples: []Example{
		{Name: "a gel", Given: sheet(aqua("3.2"), figure("water.reserve", 5.8, 4.7, 6.8)), Want: "W21 advice: 100 g hold 3.2 g of water; left open in air of 60 % humidity they would come to rest after taking up 5.8 (4.7–6.8) g more.\n" +
			"  help: lid on between steps and in use, note the room's humidity on making and filling days, and weigh an open dish to see how fast it goes\n" +
			"  at: figures/water.reserve\n", Shows: Over},
		{Name: "about as much again", Given: sheet(aqua("5"), figure("water.reserve", 5.2, 4.3, 6.1)), Want: "W21 advice, cannot tell: 100 g hold 5.0 g of water; whether they would take up more than that in air of 60 % humidity (5.2 (4.3–6.1) g) cannot be told.\n" +
			"  help: keep the lid on until it is known\n" +
			"  needs: the weight of an open dish over two weeks at 60 % humidity\n" +
			"  at: figures/water.reserve\n", Shows: Straddles},
		{Name: "exactly as much again", Given: sheet(aqua("4"), figure("water.reserve", 4, 4, 4)), Want: "W21 advice: 100 g hold 4.0 g of water; left open in air of 60 % humidity they would come to rest after taking up 4.00 g more.\n" +
			"  help: lid on between steps and in use, note the room's humidity on making and filling days, and weigh an open dish to see how fast it goes\n" +
			"  at: figures/water.reserve\n", Shows: On},
		{Name: "little room", Given: sheet(aqua("9"), figure("water.reserve", 2.1, 1.5, 2.7)), Shows: Under},
		{Name: "dry, and takes up next to nothing", Given: sheet(aqua("0.1"), figure("water.reserve", 0.5, 0.3, 0.7))},
		{Name: "wet already", Given: sheet(aqua("67"), figure("water.reserve", -65, -66, -64))},
	},
})
