package rules

import (
	"levigate"
	"levigate/cite"
)

const (
	slurryFrom = 5.0 // grams of powder in 100 g of formula from which its thirst is asked
	mostPowder = 0.8 // the share of it whose oil absorption has to be on file
)

var _ = register(Rule{
	ID:    "S05",
	Name:  "powder-takes-the-oil",
	Title: "The powder takes up all the oil there is",
	Why: "Oil absorption is the oil at which a powder just turns from crumbs to a paste. With less oil than that the oil phase is no slurry but a dough: " +
		"it seizes in the beaker and cannot be fed in. Half as much again pours. Grades differ, so the range on file is wide.",
	Since:    "0.1",
	Severity: levigate.Warn,
	After:    []string{"C02"},
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Compares: Banded,
	Messages: map[string]Message{
		"seizes": {
			Text: "The powders take up {takes} g of oil before they pour, and there are {oil:1} g: {names}.",
			Help: "less powder, more oil, or a powder of lower oil absorption; or stir part of it into the polyol phase",
		},
		"cannot-tell": {
			Text:  "The powders take up {takes} g of oil before they pour, and there are {oil:1} g; whether it stays a slurry cannot be told: {names}.",
			Help:  "stir 10 g of the powders with their share of the oil before you make a batch",
			Needs: "the oil absorption of {names}, these grades",
		},
		"no-data": {
			Text:  "There are {powder:1} g of powder on {oil:1} g of oil, and no oil absorption is on file for {names}: whether it stays a slurry cannot be told.",
			Help:  "stir 10 g of the powders with their share of the oil before you make a batch",
			Needs: "the oil absorption of {names}, these grades",
		},
	},
	Check: func(s *Subject, r *Report) {
		var fine float64
		for i := range s.Materials() {
			if s.Sits(i) == levigate.InOil {
				fine += s.Grams(i)
			}
		}
		if fine < slurryFrom {
			return // most sheets: phases need not be looked at
		}
		var lines, bare []int
		var oil, powder, known float64
		var takes levigate.Range
		for i, m := range s.Materials() {
			g := s.Grams(i)
			if g == 0 || !s.slurried(i) {
				continue
			}
			if s.Sits(i) != levigate.InOil {
				oil += g * oilShare(m)
				continue
			}
			powder += g
			if !m.OilAbsorption.Known() {
				bare = append(bare, i)
				continue
			}
			known += g
			lines = append(lines, i)
			takes.Typical += g * m.OilAbsorption.Typical / 100
			takes.Low += g * m.OilAbsorption.Low / 100
			takes.High += g * m.OilAbsorption.High / 100
		}
		if powder < slurryFrom || oil == 0 {
			return
		}
		n := Note{At: atLines(lines), Args: Args{"oil": oil, "names": s.Names(lines), "takes": about(takes.Low, takes.High)}}
		switch {
		case takes.Low >= oil:
			n.Say = "seizes"
			r.Broken(n)
		case takes.High >= oil:
			n.Say = "cannot-tell"
			r.CannotTell(n)
		case known < mostPowder*powder && powder > oil/2:
			r.CannotTell(Note{Say: "no-data", At: atLines(bare), Args: Args{"powder": powder, "oil": oil, "names": s.Names(bare)}})
		}
	},
	Examples: []Example{
		{
			Name:  "a clay mask of two thirds clay",
			Given: sheet(oily(), oil("25", "Sunflower oil"), line("75", "Kaolin", inOil(), soaks(40, 35, 45))),
			Want: "S05 warn: The powders take up 26 to 34 g of oil before they pour, and there are 25.0 g: Kaolin.\n" +
				"  help: less powder, more oil, or a powder of lower oil absorption; or stir part of it into the polyol phase\n" +
				"  at: lines/1\n", Shows: Under,
		},
		{
			Name:  "about as much as it takes",
			Given: sheet(oily(), oil("30", "Sunflower oil"), line("70", "Kaolin", inOil(), soaks(40, 35, 45))),
			Want: "S05 warn, cannot tell: The powders take up 24 to 32 g of oil before they pour, and there are 30.0 g; whether it stays a slurry cannot be told: Kaolin.\n" +
				"  help: stir 10 g of the powders with their share of the oil before you make a batch\n" +
				"  needs: the oil absorption of Kaolin, these grades\n" +
				"  at: lines/1\n", Shows: Straddles,
		},
		{
			Name:  "exactly as much",
			Given: sheet(oily(), oil("20", "Sunflower oil"), line("50", "Kaolin", inOil(), soaks(40, 40, 40))),
			Want: "S05 warn: The powders take up 20 g of oil before they pour, and there are 20.0 g: Kaolin.\n" +
				"  help: less powder, more oil, or a powder of lower oil absorption; or stir part of it into the polyol phase\n" +
				"  at: lines/1\n", Shows: On,
		},
		{Name: "a slurry that pours", Given: sheet(oily(), oil("60", "Sunflower oil"), line("30", "Kaolin", inOil(), soaks(40, 35, 45))), Shows: Over},
		{
			Name:  "much powder nobody measured",
			Given: sheet(oily(), oil("40", "Sunflower oil"), line("60", "Reed ash", inOil())),
			Want: "S05 warn, cannot tell: There are 60.0 g of powder on 40.0 g of oil, and no oil absorption is on file for Reed ash: whether it stays a slurry cannot be told.\n" +
				"  help: stir 10 g of the powders with their share of the oil before you make a batch\n" +
				"  needs: the oil absorption of Reed ash, these grades\n" +
				"  at: lines/1\n",
		},
		{
			Name: "sieved into a gel that stands already",
			Given: sheet(polyol("30", "Glycerin"), phase("A"), line("15", "Sunflower oil", of("Helianthus Annuus Seed Oil", 100), kind(levigate.Oil), liquid(levigate.InOilPhase)), phase("B"),
				line("35", "Kaolin", inOil(), soaks(40, 35, 45)), phase("C")),
		},
		{
			Name: "too much of it in the oil that is fed in",
			Given: sheet(polyol("30", "Glycerin"), phase("A"), line("15", "Sunflower oil", of("Helianthus Annuus Seed Oil", 100), kind(levigate.Oil), liquid(levigate.InOilPhase)), phase("B"),
				line("50", "Kaolin", inOil(), soaks(40, 35, 45)), phase("B")),
			Want: "S05 warn: The powders take up 18 to 22 g of oil before they pour, and there are 15.0 g: Kaolin.\n" +
				"  help: less powder, more oil, or a powder of lower oil absorption; or stir part of it into the polyol phase\n" +
				"  at: lines/2\n",
		},
		{
			Name: "a balm is molten when its starch goes in",
			Given: sheet(oily(), line("60", "Shea butter", of("Butyrospermum Parkii Butter", 100, "butter"), kind(levigate.Oil), form(levigate.Solid)), oil("5", "Jojoba oil"),
				line("35", "Maize starch", inOil(), soaks(55, 40, 70))),
		},
		{
			Name:  "five grams of powder and hardly oil",
			Given: sheet(oily(), oil("2", "Sunflower oil"), line("5", "Silica", inOil(), soaks(200, 150, 250))),
			Want: "S05 warn: The powders take up 7.5 to 12 g of oil before they pour, and there are 2.0 g: Silica.\n" +
				"  help: less powder, more oil, or a powder of lower oil absorption; or stir part of it into the polyol phase\n" +
				"  at: lines/1\n",
		},
		{Name: "not quite five grams", Given: sheet(oily(), oil("2", "Sunflower oil"), line("4.9", "Silica", inOil(), soaks(200, 150, 250)))},
		{
			Name:  "three tenths of the powder nobody measured",
			Given: sheet(oily(), oil("60", "Sunflower oil"), line("28", "Kaolin", inOil(), soaks(40, 35, 45)), line("12", "Reed ash", inOil())),
			Want: "S05 warn, cannot tell: There are 40.0 g of powder on 60.0 g of oil, and no oil absorption is on file for Reed ash: whether it stays a slurry cannot be told.\n" +
				"  help: stir 10 g of the powders with their share of the oil before you make a batch\n" +
				"  needs: the oil absorption of Reed ash, these grades\n" +
				"  at: lines/2\n",
		},
		{Name: "a pressed powder", Given: sheet(dry(), oil("6", "Binder oil"), phase("B"), line("94", "Talc", inOil(), soaks(35, 30, 40)), phase("B"))},
		{Name: "stirred into the polyol", Given: sheet(polyol("30", "Glycerin"), oil("5", "Sunflower oil"), line("60", "Kaolin", soaks(40, 35, 45)))},
	},
})

// slurried reports whether a line takes part in a slurry of powder in oil: all
// do in a product of oil; in one that oil is fed into, those of a phase of oil;
// none in a dry mix, where a little oil is to bind and not to pour.
func (s *Subject) slurried(line int) bool {
	switch s.Continuous {
	case levigate.OilContinuous:
		return true
	case levigate.NoLiquid:
		return false
	}
	p := s.Formula.Lines[line].Phase
	if p == "" {
		return false
	}
	_, oils := s.phaseKinds(p)
	return oils >= oneKind
}

// oilShare is how much of a raw material is oil or fat: butters and waxes are
// molten while the powder is stirred in.
func oilShare(m *levigate.Material) float64 {
	if m.Form != levigate.Liquid && m.Form != levigate.Solid {
		return 0
	}
	var percent float64
	for i := range m.Declared {
		if x := m.Declared[i].Substance; x != nil && x.Kind == levigate.Oil {
			percent += m.Declared[i].Percent.Typical
		}
	}
	return percent / 100
}

func inOil() trait { return func(m *levigate.Material) { m.Sits = levigate.InOil } }
