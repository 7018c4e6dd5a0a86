package rules

import (
	"regexp"
	"slices"
	"strings"

	"levigate"
	"levigate/cite"
)

var _ = register(Rule{
	ID:    "C10",
	Name:  "measured-not-weighed",
	Title: "Drops, spoons, cups, millilitres or ounces in the text",
	Why: "A drop weighs what the dropper and the liquid make of it: 20 to 40 go to a millilitre, so ten drops in 30 g are 0.8 to 1.7 %. " +
		"A spoon of clay weighs twice as much pressed as sifted. An ounce is a weight or a volume. None of them can be repeated, scaled or held against a limit.",
	Since:    "0.1",
	Severity: levigate.Advice,
	Sources:  []cite.Ref{{Key: "trade-practice"}},
	Messages: map[string]Message{
		"counted": {
			Text: "The text counts drops: {measures}. That may be one weight or twice as much.",
			Help: "weigh them once into a dish and write grams and per cent",
		},
		"spooned": {
			Text: "The text measures by the spoon or the cup: {measures}.",
			Help: "weigh it and write grams; a level spoon of a powder changes with how it lies",
		},
		"volumes": {
			Text: "The text measures by volume: {measures}. A millilitre of glycerin weighs 1.26 g, one of oil about 0.92 g.",
			Help: "weigh it and write grams",
		},
		"ounces": {
			Text: "The text says {measures}: an ounce is 28.35 g by weight and about 30 ml by volume.",
			Help: "write grams",
		},
	},
	Check: func(s *Subject, r *Report) {
		found := map[string][]string{}
		look := func(text string) {
			for _, m := range measures.FindAllStringSubmatch(text, -1) {
				if m[3] != "" {
					continue // the size of a pack, not an amount
				}
				say := "spooned"
				switch unit := strings.ToLower(m[2]); {
				case strings.HasPrefix(unit, "drop"):
					say = "counted"
				case strings.Contains(unit, "oz"), strings.Contains(unit, "ounce"):
					say = "ounces"
				case strings.HasPrefix(unit, "ml"), strings.Contains(unit, "lit"):
					say = "volumes"
				}
				if amount := strings.ToLower(m[1] + " " + m[2]); !slices.Contains(found[say], amount) {
					found[say] = append(found[say], amount)
				}
			}
		}
		look(s.Formula.Notes)
		for i := range s.Formula.Making {
			look(s.Formula.Making[i].Text)
		}
		for _, say := range []string{"counted", "spooned", "volumes", "ounces"} {
			if len(found[say]) > 0 {
				r.Broken(Note{Say: say, Row: say, Args: Args{"measures": found[say]}})
			}
		}
	},
	Examples: []Example{
		{
			Name: "a recipe from the kitchen",
			Given: sheet(line("100", "Glycerin"), notes("Makes 4 fl oz. A pinch of salt helps."),
				making("", "Add 10 drops of rose oil and two tablespoons of clay."), making("", "Stir in ½ cup of oil.")),
			Want: "C10/counted advice: The text counts drops: 10 drops. That may be one weight or twice as much.\n" +
				"  help: weigh them once into a dish and write grams and per cent\n" +
				"C10/spooned advice: The text measures by the spoon or the cup: a pinch of, two tablespoons and ½ cup of.\n" +
				"  help: weigh it and write grams; a level spoon of a powder changes with how it lies\n" +
				"C10/ounces advice: The text says 4 fl oz: an ounce is 28.35 g by weight and about 30 ml by volume.\n" +
				"  help: write grams\n",
		},
		{
			Name: "sizes of packs, and drops that are no measure",
			Given: sheet(line("100", "Glycerin"), notes("Filled into 2 oz jars; declared 50 ml. The 2 cups are tared first."),
				making("", "Feed the oil in drop by drop; look for free drops under the lens.")),
		},
		{
			Name:  "poured from a measuring glass",
			Given: sheet(line("100", "Glycerin"), making("", "Add 5 ml of lactic acid and ½ litre of water; fill 50 ml tubes.")),
			Want: "C10/volumes advice: The text measures by volume: 5 ml of and ½ litre of. A millilitre of glycerin weighs 1.26 g, one of oil about 0.92 g.\n" +
				"  help: weigh it and write grams\n",
		},
		{Name: "nothing written", Given: sheet(line("100", "Glycerin"))},
	},
})

var measures = regexp.MustCompile(`(?i)(\d+(?:[.,/]\d+)?|[½¼¾⅓⅔]|\b(?:half an?|an?|a few|one|two|three|four|five|six|eight|ten|twelve|fifteen|twenty|thirty))\s*` +
	`(drops|drop of|dash of|pinch of|pinches|(?:tea|table)?spoonfuls?|teaspoons?|tablespoons?|tsps?|tbsps?|cups? of|ml of|(?:milli)?lit(?:re|er)s? of|fl\.? ?oz|fluid ounces?|oz|ounces?)\b` +
	`(\s+(?:jar|tin|tube|bottle|pot|pack|tub|pump|dropper)s?\b)?`)

// notes is the free text of the sheet.
func notes(text string) entry { return func(a *levigate.Assessment) { a.Formula.Notes = text } }
