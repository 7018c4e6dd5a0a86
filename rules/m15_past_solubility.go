package rules

import (
	"math"
	"slices"

	"levigate"
	"levigate/cite"
	"levigate/quantity"
)

const (
	// tellsOf is what 100 g of liquid take up of nearly anything that is said to
	// dissolve in it; less of a substance than that raises no question, g.
	tellsOf = 0.5
	// mostOf is the share of the liquid whose solubilities have to be on file,
	// nearlyAll the one from which what is left of it settles nothing: a tenth of
	// alcohol takes up more of some substances than the water beside it.
	mostOf    = 0.8
	nearlyAll = 0.95
)

var _ = register(Rule{
	ID:    "M15",
	Name:  "past-solubility",
	Title: "More than the liquid at hand dissolves",
	Why: "What dissolves in water does not always dissolve in glycerin or a glycol, and a low-water product has little else. What is too much lies at " +
		"the bottom, or falls out as needles after a cold night. Of a mixed liquid two estimates are made: the solubilities added by weight, and " +
		"their logarithms, which is nearer to what mixtures of water and polyols do; between the two nobody can tell.",
	Since:    "0.1",
	Severity: levigate.Warn,
	After:    []string{"C02"},
	Sources:  []cite.Ref{{Key: "yalkowsky", At: "log-linear rule of cosolvents"}, {Key: "recalled"}},
	Compares: Banded,
	Messages: map[string]Message{
		"past": {
			Text: "{name}: {much:1} g on 100 g of liquid; {capacity} g is what that liquid dissolves at 25 °C, and less in the cold.",
			Help: "take less, more water or another liquid; leave a sample in the fridge for a week and look for crystals",
		},
		"cannot-tell": {
			Text:  "{name}: {much:1} g on 100 g of liquid; that liquid dissolves {capacity} g at 25 °C, so whether all of it dissolves cannot be told.",
			Help:  "stir it into the liquid alone, warm it clear and leave it in the fridge overnight",
			Needs: "a clear solution of {name} in the liquid of this formula after a week at 5 °C",
		},
		"as-salt": {
			Text:  "{name}: {much:1} g on 100 g of liquid, which dissolves {capacity} g of the free acid at 25 °C; with {alkali} part of it is a salt and dissolves better, so whether all of it does cannot be told.",
			Help:  "read the pH of the clear liquid; when an acid brings it down again, crystals may fall out",
			Needs: "the pH, and a clear solution of {name} in the liquid of this formula after a week at 5 °C",
		},
		"no-data": {
			Text:  "Whether all of it dissolves in {liquids} cannot be told, since no solubility is on file: {most:1 g} on 100 g of liquid.",
			Help:  "stir each into the liquid alone, warm it clear and leave it in the fridge overnight",
			Needs: "a clear solution of {names} in the liquid of this formula after a week at 5 °C",
		},
	},
	Check: func(s *Subject, r *Report) {
		if s.Continuous != levigate.PolarContinuous {
			return
		}
		liquid := s.polarLiquid()
		if grams(liquid) == 0 {
			return
		}
		var bare nothingOnFile
		for _, x := range s.dissolving() {
			much := 100 * x.grams / grams(liquid)
			n := Note{At: atLines(x.lines), Args: Args{"name": x.substance.INCI, "much": much}}
			low, high, unknown := capacity(x.substance, liquid)
			switch {
			case high == 0 || much > high && len(unknown) > 0:
				if much >= tellsOf {
					bare.add(x, much, unknown)
				}
			case much > low && x.substance.Is("acid") && s.holds("alkali"):
				n.Say, n.Args["capacity"], n.Args["alkali"] = "as-salt", about(low, high), namesOf(amounts(s, "alkali"))
				r.CannotTell(n)
			case much > high:
				n.Say, n.Args["capacity"] = "past", about(low, high)
				r.Broken(n)
			case much > low:
				n.Say, n.Args["capacity"] = "cannot-tell", about(low, high)
				r.CannotTell(n)
			}
		}
		if len(bare.most) > 0 {
			r.CannotTell(Note{Say: "no-data", At: atLines(bare.lines), Args: Args{"most": bare.most, "names": bare.names, "liquids": bare.liquids}})
		}
	},
	Examples: []Example{
		{
			Name: "allantoin in a toner",
			Given: sheet(aqua("98"), line("2", "Allantoin", of("Allantoin", 100), kind(levigate.Solute), form(levigate.FinePow),
				dissolves("Aqua", 0.5))),
			Want: "M15 warn: Allantoin: 2.0 g on 100 g of liquid; 0.50 g is what that liquid dissolves at 25 °C, and less in the cold.\n" +
				"  help: take less, more water or another liquid; leave a sample in the fridge for a week and look for crystals\n" +
				"  at: lines/1\n", Shows: Over,
		},
		{
			Name: "salt in half water, half glycerin",
			Given: sheet(aqua("40"), polyol("40", "Glycerin"), line("12", "Salt", of("Sodium Chloride", 100), kind(levigate.Solute), form(levigate.FinePow),
				dissolves("Aqua", 36), dissolves("Glycerin", 8))),
			Shows: Under,
		},
		{
			Name: "salt in nine tenths glycerin",
			Given: sheet(aqua("10"), polyol("90", "Glycerin"), line("10", "Salt", of("Sodium Chloride", 100), kind(levigate.Solute), form(levigate.FinePow),
				dissolves("Aqua", 36), dissolves("Glycerin", 8))),
			Want: "M15 warn, cannot tell: Sodium Chloride: 10.0 g on 100 g of liquid; that liquid dissolves 9.3 to 11 g at 25 °C, so whether all of it dissolves cannot be told.\n" +
				"  help: stir it into the liquid alone, warm it clear and leave it in the fridge overnight\n" +
				"  needs: a clear solution of Sodium Chloride in the liquid of this formula after a week at 5 °C\n" +
				"  at: lines/2\n", Shows: Straddles,
		},
		{
			Name:  "just as much as dissolves",
			Given: sheet(aqua("98"), line("0.49", "Allantoin", of("Allantoin", 100), kind(levigate.Solute), form(levigate.FinePow), dissolves("Aqua", 0.5))),
			Shows: On,
		},
		{
			Name:  "nothing is on file for the glycol",
			Given: sheet(polyol("90", "Propanediol"), line("3", "Niacinamide", of("Niacinamide", 100), kind(levigate.Solute), form(levigate.FinePow), dissolves("Aqua", 60))),
			Want: "M15 warn, cannot tell: Whether all of it dissolves in Propanediol cannot be told, since no solubility is on file: Niacinamide (3.3 g) on 100 g of liquid.\n" +
				"  help: stir each into the liquid alone, warm it clear and leave it in the fridge overnight\n" +
				"  needs: a clear solution of Niacinamide in the liquid of this formula after a week at 5 °C\n" +
				"  at: lines/1\n",
		},
		{
			Name: "three of them are one finding",
			Given: sheet(polyol("50", "Propanediol"), polyol("42", "Glycerin"),
				line("5", "Niacinamide", of("Niacinamide", 100), kind(levigate.Solute), form(levigate.FinePow), dissolves("Glycerin", 10)),
				line("3", "Caffeine", of("Caffeine", 100), kind(levigate.Solute), form(levigate.FinePow))),
			Want: "M15 warn, cannot tell: Whether all of it dissolves in Propanediol and Glycerin cannot be told, since no solubility is on file: Niacinamide (5.4 g) and Caffeine (3.3 g) on 100 g of liquid.\n" +
				"  help: stir each into the liquid alone, warm it clear and leave it in the fridge overnight\n" +
				"  needs: a clear solution of Niacinamide and Caffeine in the liquid of this formula after a week at 5 °C\n" +
				"  at: lines/2 lines/3\n",
		},
		{
			Name: "a tenth of alcohol may take it up",
			Given: sheet(aqua("88"), line("10", "Ethanol", of("Alcohol", 100, "volatile"), kind(levigate.Solute), form(levigate.Liquid)),
				line("2", "Salicylic acid", of("Salicylic Acid", 100, "acid"), kind(levigate.Solute), form(levigate.FinePow), dissolves("Aqua", 0.22))),
			Want: "M15 warn, cannot tell: Whether all of it dissolves in Alcohol cannot be told, since no solubility is on file: Salicylic Acid (2.0 g) on 100 g of liquid.\n" +
				"  help: stir each into the liquid alone, warm it clear and leave it in the fridge overnight\n" +
				"  needs: a clear solution of Salicylic Acid in the liquid of this formula after a week at 5 °C\n" +
				"  at: lines/2\n",
		},
		{
			Name: "an acid with lye beside it",
			Given: sheet(aqua("92"), line("6", "Lye, 10 %", of("Aqua", 90), of("Sodium Hydroxide", 10, "alkali"), water(90), form(levigate.Liquid)),
				line("2", "Salicylic acid", of("Salicylic Acid", 100, "acid"), kind(levigate.Solute), form(levigate.FinePow), dissolves("Aqua", 0.22))),
			Want: "M15 warn, cannot tell: Salicylic Acid: 2.1 g on 100 g of liquid, which dissolves 0.22 g of the free acid at 25 °C; with Sodium Hydroxide part of it is a salt and dissolves better, so whether all of it does cannot be told.\n" +
				"  help: read the pH of the clear liquid; when an acid brings it down again, crystals may fall out\n" +
				"  needs: the pH, and a clear solution of Salicylic Acid in the liquid of this formula after a week at 5 °C\n" +
				"  at: lines/2\n",
		},
		{
			Name: "three tenths of a liquid nobody knows are too much",
			Given: sheet(aqua("70"), polyol("30", "Propanediol"), line("0.5", "Niacinamide", of("Niacinamide", 100), kind(levigate.Solute), form(levigate.FinePow), dissolves("Aqua", 60)),
				line("0.45", "Caffeine", of("Caffeine", 100), kind(levigate.Solute), form(levigate.FinePow))),
			Want: "M15 warn, cannot tell: Whether all of it dissolves in Propanediol cannot be told, since no solubility is on file: Niacinamide (0.5 g) on 100 g of liquid.\n" +
				"  help: stir each into the liquid alone, warm it clear and leave it in the fridge overnight\n" +
				"  needs: a clear solution of Niacinamide in the liquid of this formula after a week at 5 °C\n" +
				"  at: lines/2\n",
		},
		{
			Name:  "a trace of another liquid changes nothing",
			Given: sheet(aqua("96"), polyol("2", "Propanediol"), line("2", "Allantoin", of("Allantoin", 100), kind(levigate.Solute), form(levigate.FinePow), dissolves("Aqua", 0.5))),
			Want: "M15 warn: Allantoin: 2.0 g on 100 g of liquid; 0.49 g is what that liquid dissolves at 25 °C, and less in the cold.\n" +
				"  help: take less, more water or another liquid; leave a sample in the fridge for a week and look for crystals\n" +
				"  at: lines/2\n",
		},
		{
			Name:  "what a cleanser in powder has left over",
			Given: sheet(polyol("10", "Glycerin"), line("60", "Isethionate powder", of("Sodium Isethionate", 8), kind(levigate.Solute), of("Sodium Cocoyl Isethionate", 84), form(levigate.FinePow))),
		},
		{Name: "a syrup arrives dissolved", Given: sheet(aqua("50"), line("50", "Glucose syrup", of("Glucose", 100), kind(levigate.Solute), form(levigate.Liquid)))},
		{Name: "sugar grains are another rule's", Given: sheet(polyol("50", "Glycerin"), line("50", "Cane sugar", of("Sucrose", 100), kind(levigate.Solute), grains()))},
	},
})

// nothingOnFile gathers the solids of which no solubility is on file, so that a
// serum of several has one finding and not one each.
type nothingOnFile struct {
	most           []Part
	names, liquids []string
	lines          []int
}

func (b *nothingOnFile) add(x dissolved, much float64, liquids []string) {
	b.most = append(b.most, Part{x.substance.INCI, much})
	b.names = append(b.names, x.substance.INCI)
	b.lines = append(b.lines, x.lines...)
	for _, l := range liquids {
		if !slices.Contains(b.liquids, l) {
			b.liquids = append(b.liquids, l)
		}
	}
}

// polarLiquid lists the water, the liquid polyols and the alcohols, by
// substance, g per 100 g.
func (s *Subject) polarLiquid() []amount {
	var out []amount
	add := func(inci string, g float64) {
		if g <= 0 {
			return
		}
		if at := slices.IndexFunc(out, func(a amount) bool { return a.name == inci }); at >= 0 {
			out[at].grams += g
			return
		}
		out = append(out, amount{name: inci, grams: g})
	}
	add("Aqua", s.Water())
	for i, m := range s.Materials() {
		if m.Form != levigate.Liquid {
			continue
		}
		for j := range m.Declared {
			share := &m.Declared[j]
			if share.Substance != nil && share.Substance.Kind == levigate.Solute && share.Substance.State != levigate.SolidState && (share.Substance.Is("polyol") || share.Substance.Is("volatile")) {
				add(share.INCI, s.Grams(i)*share.Percent.Typical/100)
			}
		}
	}
	return out
}

// dissolved is a solid that is to dissolve, over all lines that bring it dry.
type dissolved struct {
	substance *levigate.Substance
	grams     float64
	lines     []int
}

// dissolving lists the solids that are to dissolve: solutes that come as powder
// or crystals, not as grains to scrub with and not where they are seen to stay
// behind, which other rules tell, nor what a cleanser in powder has left over
// from its making.
func (s *Subject) dissolving() []dissolved {
	var out []dissolved
	for i, m := range s.Materials() {
		if m.Form == levigate.Liquid || m.Dissolved || s.Sits(i) == levigate.Grain || m.Form == levigate.Grains || !mostly(m, levigate.Solute) || s.staysOf(i) > 0 {
			continue
		}
		for j := range m.Declared {
			share := &m.Declared[j]
			x := share.Substance
			// Solubilities are of the salt without the water of its crystals.
			g := s.Grams(i) * share.Percent.Typical / 100 * (100 - m.Water.Typical) / 100
			if x == nil || x.Kind != levigate.Solute || g == 0 {
				continue
			}
			at := slices.IndexFunc(out, func(d dissolved) bool { return d.substance == x })
			if at < 0 {
				at = len(out)
				out = append(out, dissolved{substance: x})
			}
			out[at].grams += g
			out[at].lines = append(out[at].lines, i)
		}
	}
	return out
}

// capacity is what 100 g of a mixed liquid dissolve: from the logarithms of the
// solubilities to their sum by weight. Liquids nothing is known of count as
// dissolving nothing; they are named unless they are next to nothing, and there
// is no answer, 0, where they are too much of the whole.
func capacity(x *levigate.Substance, liquid []amount) (low, high float64, unknown []string) {
	total := grams(liquid)
	var known, logs float64
	for _, l := range liquid {
		d, ok := x.DissolvesIn(l.name)
		if !ok {
			unknown = append(unknown, l.name)
			continue
		}
		known += l.grams
		high += l.grams / total * d.High
		logs += l.grams / total * math.Log(max(d.Low, 1e-3))
	}
	switch {
	case known < mostOf*total:
		return 0, 0, unknown
	case known >= nearlyAll*total:
		unknown = nil
	}
	return math.Exp(logs*total/known) * known / total, high, unknown
}

// about is a range of grams in words.
func about(low, high float64) string {
	a, b := quantity.Significant(low, 2), quantity.Significant(high, 2)
	if a == b {
		return a
	}
	return a + " to " + b
}
