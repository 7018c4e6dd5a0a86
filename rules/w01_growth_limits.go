package rules

import (
	"levigate"
	"levigate/cite"
	"levigate/quantity"
	"levigate/refdata"
	"levigate/work"
)

var _ = register(Rule{
	ID:    "W01",
	Name:  "growth-limits",
	Title: "Water activity against the lowest activities at which growth was reported",
	Why: "Microbes grow down to an activity of their own and no further. Each row compares the whole band of the water activity " +
		"with one such activity: below, above, or cannot tell. Below says that this growth was not reported at such an activity and nothing more: " +
		"it does not count what is alive already, what falls in, or what condenses under a lid.",
	Since:    "0.1",
	Severity: levigate.Advice,
	After:    []string{"C02"},
	Sources:  []cite.Ref{{Key: "beuchat1981"}},
	Limits:   []string{"limits/criteria"},
	Compares: Banded,
	Messages: map[string]Message{
		"above": {
			Text: "Water activity {activity} is above {limit:2} ({says}).",
			Help: "take water out or bring polyol in, or state how growth is prevented",
		},
		"above-by": {
			Text: "Water activity {activity} is above {limit:2} ({says}), over by {by} g of water per 100 g.",
			Help: "take water out or bring polyol in, or state how growth is prevented",
		},
		"above-preserved": {
			Text: "Water activity {activity} is above {limit:2} ({says}): growth has to be kept down by the preservative.",
			Help: "a challenge test of the final formula in its final pack, and its pH at the start and the end",
		},
		"cannot-tell": {
			Text:  "Water activity {activity} cannot be told from {limit:2} ({says}).",
			Help:  "measure, or move the formula away from the limit",
			Needs: "a water activity of this version, closed cup, {temperature:0} °C, after it has rested",
		},
		"below": {Text: "Water activity {activity} is below {limit:2} ({says}) with its whole band."},
		"below-with-room": {
			Text: "Water activity {activity} is below {limit:2} ({says}) with its whole band, room for {room} g of water per 100 g.",
		},
		"no-activity": {Text: "Not compared with {limit:2}: there is no water activity."},
	},
	Check: func(s *Subject, r *Report) {
		f := s.Activity()
		rows := refdata.Criteria()
		first := 0
		if !r.All() {
			// Above the highest limit is above them all: say it once.
			for i, c := range rows {
				if f.Against(c.Activity) == work.Above {
					first = i
				}
			}
		}
		for _, c := range rows[first:] {
			growthLimit(s, r, f, c)
		}
	},
	Examples: []Example{
		{
			Name:  "a wet mask, 0.85",
			Given: sheet(activity(0.85, 0.82, 0.87), figure("water.reserve-075", -9.6, -11.2, -8.1)),
			Want:  "W01/0.80 advice: Water activity 0.85 (0.82–0.87) is above 0.80 (most moulds stop).\n" + wetHelp,
			Shows: Over,
		},
		{
			Name:  "a wet mask, everything asked for",
			All:   true,
			Given: sheet(activity(0.85, 0.82, 0.87), figure("water.reserve-075", -9.6, -11.2, -8.1)),
			Want: "W01/0.60 advice: Water activity 0.85 (0.82–0.87) is above 0.60 (lowest activity at which growth has been reported).\n" + wetHelp +
				"W01/0.70 advice: Water activity 0.85 (0.82–0.87) is above 0.70 (most xerophiles stop).\n" + wetHelp +
				"W01/0.75 advice: Water activity 0.85 (0.82–0.87) is above 0.75 (the ISO 29621 criterion, one factor among several), over by 9.6 (8.1–11.2) g of water per 100 g.\n" + wetHelp +
				"W01/0.80 advice: Water activity 0.85 (0.82–0.87) is above 0.80 (most moulds stop).\n" + wetHelp,
		},
		{
			Name:  "a lotion with its preservative",
			Given: sheet(aqua("70"), line("1", "Preservative blend PE 90", role("preservative")), activity(0.99, 0.98, 0.99), figure("water.reserve-080", -68.5, -69.1, -67.6)),
			Want: "W01/0.80 advice: Water activity 0.99 (0.98–0.99) is above 0.80 (most moulds stop): growth has to be kept down by the preservative.\n" +
				"  help: a challenge test of the final formula in its final pack, and its pH at the start and the end\n" +
				"  at: figures/water.activity\n",
		},
		{
			Name:  "the same, said to be low in water",
			Given: sheet(claim("low-water"), aqua("70"), line("1", "Preservative blend PE 90", role("preservative")), activity(0.99, 0.98, 0.99), figure("water.reserve-080", -68.5, -69.1, -67.6)),
			Want:  "W01/0.80 advice: Water activity 0.99 (0.98–0.99) is above 0.80 (most moulds stop), over by 68.5 (67.6–69.1) g of water per 100 g.\n" + wetHelp,
		},
		{
			Name:  "between the rows",
			Given: sheet(activity(0.6, 0.57, 0.64)),
			Want: "W01/0.60 advice, cannot tell: Water activity 0.60 (0.57–0.64) cannot be told from 0.60 (lowest activity at which growth has been reported).\n" +
				"  help: measure, or move the formula away from the limit\n" +
				"  needs: a water activity of this version, closed cup, 25 °C, after it has rested\n" +
				"  at: figures/water.activity\n",
			Shows: Straddles,
		},
		{
			Name:  "a reading on the limit counts as above",
			Given: sheet(activity(0.6, 0.6, 0.6)),
			Want:  "W01/0.60 advice: Water activity 0.60 is above 0.60 (lowest activity at which growth has been reported).\n" + wetHelp,
			Shows: On,
		},
		{Name: "a gel at 0.30", Given: sheet(activity(0.30, 0.28, 0.34)), Shows: Under},
		{
			Name:  "a gel at 0.30, everything asked for",
			All:   true,
			Given: sheet(activity(0.30, 0.28, 0.34), figure("water.reserve", 5.8, 5.1, 6.4)),
			Want: "W01/0.60 advice, holds: Water activity 0.30 (0.28–0.34) is below 0.60 (lowest activity at which growth has been reported) with its whole band, room for 5.8 (5.1–6.4) g of water per 100 g.\n  at: figures/water.activity\n" +
				"W01/0.70 advice, holds: Water activity 0.30 (0.28–0.34) is below 0.70 (most xerophiles stop) with its whole band.\n  at: figures/water.activity\n" +
				"W01/0.75 advice, holds: Water activity 0.30 (0.28–0.34) is below 0.75 (the ISO 29621 criterion, one factor among several) with its whole band.\n  at: figures/water.activity\n" +
				"W01/0.80 advice, holds: Water activity 0.30 (0.28–0.34) is below 0.80 (most moulds stop) with its whole band.\n  at: figures/water.activity\n",
		},
		{
			Name:  "a balm, everything asked for",
			All:   true,
			Given: sheet(oily(), missing("water.activity", "oil surrounds everything")),
			Want: "W01/0.60 advice, not judged: Not compared with 0.60: there is no water activity.\n" +
				"W01/0.70 advice, not judged: Not compared with 0.70: there is no water activity.\n" +
				"W01/0.75 advice, not judged: Not compared with 0.75: there is no water activity.\n" +
				"W01/0.80 advice, not judged: Not compared with 0.80: there is no water activity.\n",
		},
	},
})

const wetHelp = "  help: take water out or bring polyol in, or state how growth is prevented\n  at: figures/water.activity\n"

// growthLimit judges one row.
func growthLimit(s *Subject, r *Report, f *work.Figure, c refdata.Criterion) {
	answer := f.Against(c.Activity)
	if !r.All() && (answer == work.Below || answer == work.NotJudged) {
		return
	}
	n := Note{Row: quantity.Fixed(c.Activity, 2), Args: Args{"limit": c.Activity}, Mark: c.From.Mark, Sources: []cite.Ref{c.From.From}}
	if answer == work.NotJudged {
		n.Say = "no-activity"
		r.NotJudged(n)
		return
	}
	n.At = []string{atFigure(f.ID)}
	n.Args["activity"], n.Args["says"] = bandOf(f), c.Says
	room := s.Figure(c.Figure)
	if room != nil && room.State == work.Missing {
		room = nil
	}
	switch answer {
	case work.Above:
		n.Say = "above"
		switch {
		case s.HasRole("preservative") && s.Water() >= wetFrom && !s.Formula.Claimed("low-water"):
			n.Say = "above-preserved" // nobody means to dry a lotion
		case room != nil:
			n.Say, n.Args["by"] = "above-by", bandOf(room).turned()
		}
		r.Broken(n)
	case work.CannotTell:
		n.Say, n.Args["temperature"] = "cannot-tell", s.Conditions.Temperature
		r.CannotTell(n)
	default:
		n.Say = "below"
		if room != nil {
			n.Say, n.Args["room"] = "below-with-room", bandOf(room)
		}
		r.Holds(n)
	}
}
