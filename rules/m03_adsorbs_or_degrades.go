package rules

import (
	"math"
	"slices"

	"levigate"
	"levigate/cite"
	"levigate/refdata"
)

// small is the part that a powder may at most hold below which a row keeps
// quiet, %. A judgement of this project.
const small = 5.0

var _ = register(Rule{
	ID:    "M03",
	Name:  "adsorbs-or-degrades",
	Title: "A powder that may hold or break down what stands beside it",
	Why: "Charcoal and clays are used because they take things up, and they do not choose: preservative, scent and active go the same way. " +
		"Iron and acid sites also break sensitive substances down. Where a capacity was measured, the most that can be held follows from the grams: " +
		"powder times capacity over what there is. Nearly all of it was measured in water; a polyol competes for the surface, so this is an upper end, never the loss.",
	Since:    "0.1",
	Severity: levigate.Warn,
	Sources:  []cite.Ref{{Key: "levigate-judgement"}},
	Limits:   []string{"pairs"},
	Messages: map[string]Message{
		"beside": {Text: "{a} beside {b}: {why}.", Help: "{do}"},
		"bound": {
			Text: "{a} beside {b}: {why}. With the capacity on file, {powder:2} g can hold at most {share:0} % of the {active:2} g.",
			Help: "{do}",
		},
		"bound-range": {
			Text: "{a} beside {b}: {why}. With the capacity on file, {powder:2} g can hold at most {share:0} % of the {active:2} g, or {highest:0} % at its upper end.",
			Help: "{do}",
		},
		"small":        {Text: "{a} beside {b}: with the capacity on file, at most {highest:1} % could be held."},
		"no-polar":     {Text: "{a} beside {b}: they meet in a polar liquid, and here there is none."},
		"not-measured": {Text: "{a} beside {b}: {why}. How much can be held cannot be worked out: there is no molar mass on file.", Help: "{do}"},
	},
	Check: judgePairs,
	Examples: []Example{
		{
			Name: "ascorbic acid and bakuchiol beside an iron-bearing clay",
			Given: sheet(aqua("62"), line("3", "L-ascorbic acid", of("Ascorbic Acid", 100, "ascorbic")), line("0.5", "Bakuchiol, liquid", of("Bakuchiol", 100, "bakuchiol")),
				line("5", "Green clay", of("Illite", 100, "clay", "iron-bearing"))),
			Want: "M03/iron-ascorbic warn: Green clay beside Ascorbic Acid: iron speeds the oxidation of ascorbic acid in water; beside a clay nobody measured this, keeping them apart is common practice.\n" +
				"  help: keep them in separate products, or take a clay low in iron, add a chelator, keep air and water low and follow the colour\n" +
				"  at: lines/3 lines/1\n" +
				"M03/iron-bakuchiol warn: Green clay beside Bakuchiol: bakuchiol beside an iron-bearing clay is avoided by common practice: acid sites and iron attack unsaturated phenols; no source was found.\n" +
				"  help: keep them in separate products, or take a clay low in iron and follow content and colour at 40 °C\n" +
				"  at: lines/3 lines/2\n",
		},
		{
			Name:  "thymol on bentonite: the grams say it all",
			Given: sheet(line("1", "Bentonite", of("Bentonite", 100, "clay", "smectite")), line("0.5", "Thymol", of("Thymol", 100))),
			Want: "M03/bentonite-thymol warn: Bentonite beside Thymol: a sodium bentonite took thymol out of water until it held 177 mg per g, nine tenths of it in 20 minutes. " +
				"With the capacity on file, 1.00 g can hold at most 35 % of the 0.50 g.\n" +
				"  help: measure the thymol the finished product gives up; bring it in by the oil if there is one\n" +
				"  at: lines/0 lines/1\n",
		},
		{
			Name:  "methylparaben in a blend beside charcoal",
			Given: sheet(line("1", "Charcoal powder", is("charcoal")), line("1", "Paraben blend", of("Methylparaben", 40, "phenolic-preservative", "preservative"))),
			Want: "M03/charcoal-methylparaben warn: Charcoal powder beside Methylparaben: activated carbon takes methylparaben out of water: " +
				"two commercial carbons held about 150 mg per g, a third about 323. " +
				"With the capacity on file, 1.00 g can hold at most 38 % of the 0.40 g, or 81 % at its upper end.\n" +
				"  help: have the preservation tested on the finished product with the charcoal in it, never on the base alone\n" +
				"  at: lines/0 lines/1\n",
		},
		{
			Name: "a cationic beside a clay that trades ions",
			Given: sheet(line("1", "Bentonite", is("smectite")), line("0.5", "Benzalkonium chloride",
				declares(&levigate.Substance{INCI: "Benzalkonium Chloride", MolarMass: 354, Classes: []string{"cationic"}}, levigate.Exactly(100)))),
			Want: "M03/smectite-cationic warn: Bentonite beside Benzalkonium Chloride: smectites trade their own ions for cationics, hold them and flock. " +
				"With the capacity on file, 1.00 g can hold at most 71 % of the 0.50 g, or 85 % at its upper end.\n" +
				"  help: count the part that may be bound as lost, or use a substance without charge\n" +
				"  at: lines/0 lines/1\n",
		},
		{
			Name:  "a cationic polymer, whose molar mass nobody states",
			Given: sheet(line("1", "Bentonite", is("smectite")), line("0.5", "Cationic guar", is("cationic"))),
			Want: "M03/smectite-cationic warn: Bentonite beside Cationic guar: smectites trade their own ions for cationics, hold them and flock. " +
				"How much can be held cannot be worked out: there is no molar mass on file.\n" +
				"  help: count the part that may be bound as lost, or use a substance without charge\n" +
				"  at: lines/0 lines/1\n",
		},
		{
			Name:  "a little kaolin and phenoxyethanol: small, said only when asked",
			All:   true,
			Given: sheet(line("5", "Kaolin", is("clay")), line("1", "Phenoxyethanol", of("Phenoxyethanol", 100, "phenolic-preservative"))),
			Want: "M03/clay-phenolic-preservative advice, holds: Kaolin beside Phenoxyethanol: with the capacity on file, at most 1.5 % could be held.\n" +
				"  at: lines/0 lines/1\n",
		},
		{
			Name:  "a balm: no polar liquid to meet in",
			All:   true,
			Given: sheet(oily(), line("5", "Green clay", is("clay")), line("2", "Ascorbic acid", is("ascorbic"))),
			Want: "M03/clay-ascorbic warn, not judged: Green clay beside Ascorbic acid: they meet in a polar liquid, and here there is none.\n" +
				"  at: lines/0 lines/1\n",
		},
		{Name: "a trace of charcoal for colour", Given: sheet(line("0.05", "Charcoal powder", is("charcoal")), line("1", "Fragrance", is("fragrance")))},
		{Name: "clay and nothing sensitive", Given: sheet(line("8", "Kaolin", is("clay")), line("47", "Sunflower oil"))},
	},
})

// judgePairs asks the rows in order. Two lines get one finding: the first row
// that fits speaks for them.
func judgePairs(s *Subject, r *Report) {
	x := pairs()
	present := x.present(s)
	var spoken [][2]int
	for i := range x.rows {
		row := &x.rows[i]
		if !present[row.a] || !present[row.b] {
			continue
		}
		powder, active := amounts(s, row.A), amounts(s, row.B)
		if grams(powder) < row.Least {
			continue
		}
		before := len(spoken)
		powder, active, spoken = left(powder, active, spoken)
		if len(spoken) > before {
			judgePair(s, r, &row.Pair, powder, active)
		}
	}
}

func judgePair(s *Subject, r *Report, p *refdata.Pair, powder, active []amount) {
	n := Note{Row: p.Key, Level: p.Level, Mark: p.Mark, Sources: p.Sources, At: atLines(linesOf(powder, active)),
		Args: Args{"a": s.Names(linesOf(powder)), "b": namesOf(active)}}
	if p.Water && (s.Continuous == levigate.OilContinuous || s.Continuous == levigate.NoLiquid) {
		n.Say = "no-polar"
		r.NotJudged(n)
		return
	}
	share, highest, known := atMost(p, powder, active)
	if known && highest < small {
		n.Say, n.Args["highest"] = "small", highest
		r.Holds(n)
		return
	}
	n.Args["why"], n.Args["do"] = p.Why, p.Do
	switch {
	case !known && p.Exchange.Known():
		n.Say = "not-measured"
	case !known:
		n.Say = "beside"
	default:
		n.Say, n.Args["powder"], n.Args["active"], n.Args["share"] = "bound", grams(powder), grams(active), share
		if math.Round(highest) > math.Round(share) {
			n.Say, n.Args["highest"] = "bound-range", highest
		}
	}
	r.Broken(n)
}

// atMost is the most a powder can hold of what stands beside it, in % of it:
// powder × capacity / active, at the typical and at the highest capacity.
func atMost(p *refdata.Pair, powder, active []amount) (share, highest float64, known bool) {
	capacity, there := p.Capacity, 1000*grams(active) // mg per g, mg
	if p.Exchange.Known() {
		capacity, there = p.Exchange, 0 // mmol per g, mmol
		for _, a := range active {
			if a.substance == nil || a.substance.MolarMass == 0 {
				return 0, 0, false
			}
			there += 1000 * a.grams / a.substance.MolarMass
		}
	}
	if !capacity.Known() || there == 0 {
		return 0, 0, false
	}
	of := func(c float64) float64 { return math.Min(100, 100*grams(powder)*c/there) }
	return of(capacity.Typical), of(capacity.High), true
}

// left keeps what is in a pair of lines nobody has spoken for yet, and adds
// those pairs to what is spoken for.
func left(powder, active []amount, spoken [][2]int) (a, b []amount, now [][2]int) {
	now = spoken
	for _, p := range powder {
		for _, q := range active {
			pair := [2]int{p.line, q.line}
			if p.name == q.name || slices.Contains(spoken, pair) {
				continue
			}
			now = append(now, pair)
			if !slices.Contains(a, p) {
				a = append(a, p)
			}
			if !slices.Contains(b, q) {
				b = append(b, q)
			}
		}
	}
	return a, b, now
}
