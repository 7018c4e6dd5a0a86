package rules

import (
	"slices"

	"levigate"
	"levigate/cite"
)

// coolEnough is the temperature below which what heat spoils goes in, °C.
const coolEnough = 40.0

// stillPours is how warm a balm with wax in it has to be to be stirred and
// poured at all, °C: its scent goes in there, and not at 40 °C, where it is set. A
// judgement of this project.
const stillPours = 65.0

var _ = register(Rule{
	ID:    "M14",
	Name:  "spoiled-by-heat",
	Title: "Heated with the rest, though it belongs to the cooling down",
	Why: "Essential oils fly off, vitamins and many preservatives break down, and hydrolysates go dark when they are melted in with the waxes. " +
		"The trade keeps them for the cool-down, below about 40 °C.",
	Since:    "0.1",
	Severity: levigate.Advice,
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Compares: Exact,
	Messages: map[string]Message{
		"step": {
			Text: "{names}: the making heats phase {phase} to {temperature:0} °C; {limit:0} °C is where such things still go in.",
			Help: "give them a phase of their own and stir them in while it cools",
		},
		"melted": {
			Text: "{names}: in one phase with {hot}, which has to be melted.",
			Help: "give them a phase of their own and stir them in below {limit:0} °C",
		},
		"balm-step": {
			Text: "{names}: the making heats phase {phase} to {temperature:0} °C; a balm still pours at {limit:0} °C or below.",
			Help: "give them a phase of their own and stir them in last, just before it sets, and pour at once",
		},
		"balm-melted": {
			Text: "{names}: in one phase with {hot}, which has to be melted.",
			Help: "give them a phase of their own and stir them in last, at {limit:0} °C or as cool as it still pours",
		},
	},
	Check: func(s *Subject, r *Report) {
		prefix, limit := "", coolEnough
		if s.Continuous == levigate.OilContinuous && len(s.Lines(func(i int, m *levigate.Material) bool { return m.Warns("hot-wax") && s.Grams(i) > 0 })) > 0 {
			prefix, limit = "balm-", stillPours
		}
		for _, p := range s.phases() {
			late := s.Lines(func(i int, m *levigate.Material) bool {
				return s.Formula.Lines[i].Phase == p && m.Belongs == levigate.InCoolDown && s.Grams(i) > 0
			})
			if len(late) == 0 {
				continue
			}
			n := Note{At: atLines(late), Args: Args{"names": s.Names(late)}}
			if t, ok := s.heated(p); ok {
				if t > limit {
					n.Say, n.Args["phase"], n.Args["temperature"], n.Args["limit"] = prefix+"step", p, t, limit
					r.Broken(n)
				}
				continue // the making says how warm it gets
			}
			hot := s.Lines(func(i int, m *levigate.Material) bool {
				return s.Formula.Lines[i].Phase == p && m.Warns("hot-wax") && s.Grams(i) > 0
			})
			if len(hot) > 0 {
				n.Say, n.Args["hot"], n.Args["limit"] = prefix+"melted", s.Names(hot), limit
				r.Broken(n)
			}
		}
	},
	Examples: []Example{
		{
			Name:  "lavender in the melted phase",
			Given: sheet(oily(), line("20", "Beeswax", caution("hot-wax")), phase("A"), line("1", "Lavender oil", belongs(levigate.InCoolDown)), phase("A")),
			Want: "M14 advice: Lavender oil: in one phase with Beeswax, which has to be melted.\n" +
				"  help: give them a phase of their own and stir them in last, at 65 °C or as cool as it still pours\n" +
				"  at: lines/1\n",
		},
		{
			Name:  "panthenol in the melted phase of a lotion",
			Given: sheet(aqua("80"), phase("A"), line("5", "Emulsifying wax", caution("hot-wax")), phase("B"), line("1", "Panthenol", belongs(levigate.InCoolDown)), phase("B")),
			Want: "M14 advice: Panthenol: in one phase with Emulsifying wax, which has to be melted.\n" +
				"  help: give them a phase of their own and stir them in below 40 °C\n" +
				"  at: lines/2\n",
		},
		{
			Name: "scent in a balm at 75 °C",
			Given: sheet(oily(), line("20", "Beeswax", caution("hot-wax")), phase("A"), line("1", "Lavender oil", belongs(levigate.InCoolDown)), phase("C"),
				heat("A", 78), heat("C", 75)),
			Want: "M14 advice: Lavender oil: the making heats phase C to 75 °C; a balm still pours at 65 °C or below.\n" +
				"  help: give them a phase of their own and stir them in last, just before it sets, and pour at once\n" +
				"  at: lines/1\n",
		},
		{
			Name: "scent in a balm as it is poured, at 62 °C",
			Given: sheet(oily(), line("20", "Beeswax", caution("hot-wax")), phase("A"), line("1", "Lavender oil", belongs(levigate.InCoolDown)), phase("C"),
				heat("A", 78), heat("C", 62)),
		},
		{
			Name:  "heated to 75 °C",
			Given: sheet(aqua("90"), phase("A"), line("1", "Panthenol", belongs(levigate.InCoolDown)), phase("A"), heat("A", 75)),
			Want: "M14 advice: Panthenol: the making heats phase A to 75 °C; 40 °C is where such things still go in.\n" +
				"  help: give them a phase of their own and stir them in while it cools\n" +
				"  at: lines/1\n", Shows: Over,
		},
		{Name: "at 40 °C", Given: sheet(aqua("90"), phase("A"), line("1", "Panthenol", belongs(levigate.InCoolDown)), phase("A"), heat("A", 40)), Shows: On},
		{Name: "stirred cold", Given: sheet(aqua("90"), phase("A"), line("1", "Panthenol", belongs(levigate.InCoolDown)), phase("A"), heat("A", 22)), Shows: Under},
		{
			Name:  "in a phase of its own",
			Given: sheet(oily(), line("20", "Beeswax", caution("hot-wax")), phase("A"), line("1", "Lavender oil", belongs(levigate.InCoolDown)), phase("C")),
		},
		{Name: "no letters: nothing says what is heated", Given: sheet(oily(), line("20", "Beeswax", caution("hot-wax")), line("1", "Lavender oil", belongs(levigate.InCoolDown)))},
	},
})

// phases lists the phase letters, each once, in the order they come.
func (s *Subject) phases() []string {
	var out []string
	for i := range s.Formula.Lines {
		if p := s.Formula.Lines[i].Phase; p != "" && !slices.Contains(out, p) {
			out = append(out, p)
		}
	}
	return out
}

// heated is the highest temperature the making names for a phase.
func (s *Subject) heated(phase string) (celsius float64, named bool) {
	for i := range s.Formula.Making {
		if st := &s.Formula.Making[i]; st.Phase == phase && st.HasTemp && (!named || st.Temperature > celsius) {
			celsius, named = st.Temperature, true
		}
	}
	return celsius, named
}

// heat is a step that brings a phase to a temperature.
func heat(phase string, celsius float64) entry {
	return func(a *levigate.Assessment) {
		a.Formula.Making = append(a.Formula.Making, levigate.Step{Phase: phase, Text: "Warm.", Temperature: celsius, HasTemp: true})
	}
}
