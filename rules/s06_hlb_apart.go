package rules

import (
	"math"

	"levigate"
	"levigate/cite"
)

const (
	lotionFrom = 30.0 // g of water per 100 g from which a product is a lotion
	farApart   = 2.0  // units of HLB
	mostOils   = 0.7  // the share of the oils whose required HLB has to be on file
)

var _ = register(Rule{
	ID:    "S06",
	Name:  "hlb-apart",
	Title: "HLB of the emulsifiers far from what the oils ask",
	Why: "For ethoxylates and simple esters in a lotion of oil in water the blend's HLB and the one the oils ask for are a first sieve: far apart, it mostly parts. " +
		"It is no more than a sieve. It says nothing of polymers, lamellar emulsifiers, soaps or gels in polyol, and lists of it differ by several units.",
	Since:    "0.1",
	Severity: levigate.Advice,
	After:    []string{"C02"},
	Sources:  []cite.Ref{{Key: "griffin1949"}, {Key: "levigate-judgement", At: "two units"}},
	Compares: Exact,
	Messages: map[string]Message{
		"apart": {
			Text: "The emulsifiers have an HLB of {has}, the oils ask for {ask}.",
			Help: "shift the shares of two emulsifiers, one high and one low; make three small trials a unit apart and let them stand; water in oil on purpose asks for 3 to 6",
		},
	},
	Check: func(s *Subject, r *Report) {
		if s.Continuous != levigate.PolarContinuous || s.Water() < lotionFrom {
			return
		}
		has, lines, ok := s.hlbOfEmulsifiers()
		if !ok {
			return
		}
		ask, ok := s.hlbOfOils()
		if !ok {
			return
		}
		if gap := max(ask.Low-has.High, has.Low-ask.High); gap > farApart {
			r.Broken(Note{Say: "apart", At: atLines(lines), Args: Args{"has": units(has), "ask": units(ask)}})
		}
	},
	Examples: []Example{
		{
			Name:  "a lotion held by a W/O emulsifier",
			Given: sheet(aqua("70"), line("20", "Sunflower oil", of("Helianthus Annuus Seed Oil", 100), kind(levigate.Oil), requires(7)), line("4", "Sorbitan oleate", of("Sorbitan Oleate", 100), hlb(4.3), role("emulsifier"))),
			Want: "S06 advice: The emulsifiers have an HLB of 4.3, the oils ask for 7.0.\n" +
				"  help: shift the shares of two emulsifiers, one high and one low; make three small trials a unit apart and let them stand; water in oil on purpose asks for 3 to 6\n" +
				"  at: lines/2\n", Shows: Over,
		},
		{
			Name:  "three tenths of water and of the oils unknown",
			Given: sheet(aqua("30"), line("35", "Sunflower oil", of("Helianthus Annuus Seed Oil", 100), kind(levigate.Oil), requires(7)), oil("15", "Bog oil"), line("4", "Sorbitan oleate", of("Sorbitan Oleate", 100), hlb(4.3), role("emulsifier"))),
			Want: "S06 advice: The emulsifiers have an HLB of 4.3, the oils ask for 7.0.\n" +
				"  help: shift the shares of two emulsifiers, one high and one low; make three small trials a unit apart and let them stand; water in oil on purpose asks for 3 to 6\n" +
				"  at: lines/3\n",
		},
		{Name: "less water is no lotion", Given: sheet(aqua("29"), line("60", "Sunflower oil", of("Helianthus Annuus Seed Oil", 100), kind(levigate.Oil), requires(7)), line("4", "Sorbitan oleate", of("Sorbitan Oleate", 100), hlb(4.3), role("emulsifier")))},
		{Name: "too little of the oils is on file", Given: sheet(aqua("70"), line("13", "Sunflower oil", of("Helianthus Annuus Seed Oil", 100), kind(levigate.Oil), requires(7)), oil("7", "Bog oil"), line("4", "Sorbitan oleate", of("Sorbitan Oleate", 100), hlb(4.3), role("emulsifier")))},
		{
			Name:  "a little more than two apart",
			Given: sheet(aqua("70"), line("20", "Sunflower oil", of("Helianthus Annuus Seed Oil", 100), kind(levigate.Oil), requires(7)), line("4", "Sorbitan oleate", of("Sorbitan Oleate", 100), hlb(4.6), role("emulsifier"))),
			Want: "S06 advice: The emulsifiers have an HLB of 4.6, the oils ask for 7.0.\n" +
				"  help: shift the shares of two emulsifiers, one high and one low; make three small trials a unit apart and let them stand; water in oil on purpose asks for 3 to 6\n" +
				"  at: lines/2\n",
		},
		{
			Name:  "two units apart",
			Given: sheet(aqua("70"), line("20", "Sunflower oil", of("Helianthus Annuus Seed Oil", 100), kind(levigate.Oil), requires(7)), line("4", "Blend", of("A", 50), of("B", 50), hlb(9), role("emulsifier"))),
			Shows: On,
		},
		{
			Name: "a blend that meets it",
			Given: sheet(aqua("70"), line("20", "Sunflower oil", of("Helianthus Annuus Seed Oil", 100), kind(levigate.Oil), requires(7)),
				line("3", "Sorbitan oleate", of("Sorbitan Oleate", 100), hlb(4.3), role("emulsifier")), line("1.2", "Polysorbate 80", of("Polysorbate 80", 100), hlb(15), role("emulsifier"))),
			Shows: Under,
		},
		{
			Name: "lists that differ widely settle nothing",
			Given: sheet(aqua("70"), line("20", "Caprylic/capric triglyceride", of("Caprylic/Capric Triglyceride", 100), kind(levigate.Oil), requires(5, 15)),
				line("4", "Polysorbate 60", of("Polysorbate 60", 100), hlb(14.9), role("emulsifier"))),
		},
		{
			Name: "an emulsifying wax holds by its layers",
			Given: sheet(aqua("70"), line("20", "Sunflower oil", of("Helianthus Annuus Seed Oil", 100), kind(levigate.Oil), requires(7)),
				line("6", "Emulsifying wax", of("Polysorbate 60", 20), hlb(14.9), of("Cetearyl Alcohol", 80, "fatty-alcohol"), role("emulsifier"))),
		},
		{Name: "an emulsifier without an HLB", Given: sheet(aqua("70"), line("20", "Sunflower oil", of("Helianthus Annuus Seed Oil", 100), kind(levigate.Oil), requires(7)), emulsifier("4", "Acrylates crosspolymer"))},
		{Name: "oils nobody measured", Given: sheet(aqua("70"), oil("20", "Bog oil"), line("4", "Sorbitan oleate", of("Sorbitan Oleate", 100), hlb(4.3), role("emulsifier")))},
		{Name: "a gel in polyol", Given: sheet(polyol("30", "Glycerin"), line("65", "Sunflower oil", of("Helianthus Annuus Seed Oil", 100), kind(levigate.Oil), requires(7)), line("4", "Sucrose laurate", of("Sucrose Laurate", 100), hlb(15), role("emulsifier")))},
	},
})

// hlbOfEmulsifiers is the HLB of the emulsifiers together, by weight, with the
// lines they stand on. False where one of them has none on file, where a charge
// makes the number mean something else, or where an emulsifying wax brings a fat
// alcohol of its own: its layers hold, and no HLB says so.
func (s *Subject) hlbOfEmulsifiers() (blend levigate.Range, lines []int, ok bool) {
	var sum float64
	add := func(h []levigate.Stated, g float64) bool {
		if len(h) == 0 {
			return false
		}
		all := across(h)
		blend.Low, blend.High, sum = blend.Low+g*all.Low, blend.High+g*all.High, sum+g
		return true
	}
	for i, m := range s.Materials() {
		g := s.Grams(i)
		if !m.HasRole("emulsifier") || g == 0 {
			continue
		}
		lines = append(lines, i)
		if add(m.HLB, g) {
			continue
		}
		for j := range m.Declared {
			x := m.Declared[j].Substance
			if x.Is("fatty-alcohol") {
				return blend, lines, false
			}
			if x == nil || x.Kind != levigate.Other {
				continue // what it is dissolved in
			}
			if x.Charge != "" && x.Charge != levigate.Nonionic || !add(x.HLB, g*m.Declared[j].Percent.Typical/100) {
				return blend, lines, false
			}
		}
	}
	if sum == 0 {
		return blend, lines, false
	}
	return levigate.Range{Low: blend.Low / sum, High: blend.High / sum}, lines, true
}

// hlbOfOils is what the oils together ask for in water, by weight; false where
// too little of them is on file.
func (s *Subject) hlbOfOils() (levigate.Range, bool) {
	var all, known float64
	var ask levigate.Range
	for i := range s.Composition.Contained {
		c := &s.Composition.Contained[i]
		if c.Substance == nil || c.Substance.Kind != levigate.Oil {
			continue
		}
		g := c.Percent.Typical
		all += g
		if len(c.Substance.RequiredHLB) > 0 {
			q := across(c.Substance.RequiredHLB)
			ask.Low, ask.High, known = ask.Low+g*q.Low, ask.High+g*q.High, known+g
		}
	}
	if known == 0 || known < mostOils*all {
		return ask, false
	}
	return levigate.Range{Low: ask.Low / known, High: ask.High / known}, true
}

// across is the range that holds everything sources say.
func across(list []levigate.Stated) levigate.Range {
	out := levigate.Range{Low: math.Inf(1), High: math.Inf(-1)}
	for _, x := range list {
		out.Low, out.High = min(out.Low, x.Low), max(out.High, x.High)
	}
	return out
}

// units writes a range of HLB.
func units(r levigate.Range) string {
	low, high := number(r.Low, 1), number(r.High, 1)
	if low == high {
		return low
	}
	return low + " to " + high
}
