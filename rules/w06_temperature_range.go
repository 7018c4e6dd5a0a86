package rules

import (
	"levigate"
	"levigate/cite"
	"levigate/work"
)

var _ = register(Rule{
	ID:    "W06",
	Name:  "temperature-range",
	Title: "Figures calculated outside 5 to 40 °C",
	Why: "The isotherms were compared with measurements between 5 and 40 °C. Outside that they are carried on by the same equations: " +
		"the direction is right, the size is a guess, and the band is wider to say so.",
	Since:    "0.1",
	Severity: levigate.Advice,
	Sources:  []cite.Ref{{Key: "levigate-judgement"}},
	Compares: Exact,
	Messages: map[string]Message{
		"outside": {
			Text: "At {temperature:0} °C these figures lie outside what was compared with measurements, {coldest:0} to {warmest:0} °C: {figures}.",
			Help: "read them as a direction; for a number, check at a temperature within the range or measure",
		},
	},
	Check: func(s *Subject, r *Report) {
		t := s.Conditions.Temperature
		if t >= levigate.ProvedFrom && t <= levigate.ProvedTo {
			return
		}
		var titles, places []string
		for i := range s.Figures {
			if f := &s.Figures[i]; f.State == work.OutOfRange {
				titles, places = append(titles, f.Title), append(places, atFigure(f.ID))
			}
		}
		if len(titles) > 0 {
			r.Broken(Note{Say: "outside", At: places, Args: Args{"temperature": t, "coldest": levigate.ProvedFrom, "warmest": levigate.ProvedTo, "figures": titles}})
		}
	},
	Examples: []Example{
		{
			Name:  "a car in summer",
			Given: sheet(at(60), activity(0.33, 0.24, 0.42), outOfRange(), figure("water.reserve", 5.6, 3.9, 7.2), outOfRange()),
			Want: "W06 advice: At 60 °C these figures lie outside what was compared with measurements, 5 to 40 °C: Activity and Reserve.\n" +
				"  help: read them as a direction; for a number, check at a temperature within the range or measure\n" +
				"  at: figures/water.activity figures/water.reserve\n",
			Shows: Over,
		},
		{
			Name:  "frost",
			Given: sheet(at(-5), activity(0.28, 0.20, 0.36), outOfRange()),
			Want: "W06 advice: At -5 °C these figures lie outside what was compared with measurements, 5 to 40 °C: Activity.\n" +
				"  help: read them as a direction; for a number, check at a temperature within the range or measure\n" +
				"  at: figures/water.activity\n",
		},
		{Name: "the warm end of the range", Given: sheet(at(40), activity(0.32, 0.29, 0.36)), Shows: On},
		{Name: "a room", Given: sheet(activity(0.30, 0.28, 0.34)), Shows: Under},
		{Name: "out of range for another reason", Given: sheet(activity(0.05, 0.01, 0.12), outOfRange())},
	},
})
