package refdata

import (
	"strings"
	"testing"

	"levigate"
	"levigate/cite"
)

// alone are the substances that must be usable as a line by themselves,
// whether or not a raw material holds them.
var alone = strings.Split("Aqua;Glycerin;Propanediol;Propylene Glycol;Butylene Glycol;Sorbitol;Xylitol;Mannitol;Erythritol;Sucrose;"+
	"Glucose;Fructose;Maltose;Maltodextrin;Urea;Sodium Chloride;Potassium Chloride;Glycine;Alanine;Proline;Serine;Betaine;Lactic Acid;"+
	"Citric Acid;Sodium Lactate;Sodium PCA;Mel;Zea Mays Starch;Kaolin", ";")

func TestEveryTableOpensWithItsCard(t *testing.T) {
	names := Names()
	if len(names) < 10 {
		t.Fatalf("only %d tables are embedded", len(names))
	}
	for _, name := range names {
		if _, err := Open(name); err != nil {
			t.Error(err)
		}
	}
}

func TestBadCardsAreRefused(t *testing.T) {
	const good = testCard
	if _, err := parseTable("t", good+"a\tb\n1\t2\n"); err != nil {
		t.Fatal(err)
	}
	for old, want := range map[string]string{
		"# licence: facts\n": "needs licence", "# title: T\n": "needs title", "# source: recalled\n": "needs source",
		"# mark: from memory\n": "needs mark", "# units: g\n": "needs units",
	} {
		refused(t, strings.Replace(good, old, "", 1), "a\tb\n1\t2\n", want)
	}
	refused(t, strings.Replace(good, "recalled", "nobody1999", 1), "a\n1\n", "not in the bibliography")
	refused(t, strings.Replace(good, "from memory", "certain", 1), "a\n1\n", "mark")
	refused(t, good+"# colour: red\n", "a\n1\n", "not a card's key")
	refused(t, good, "a\tb\n1\n", "1 cells")
	refused(t, good, "a\ta\n1\t2\n", "twice")
	refused(t, good, "a\n", "no rows")
}

const testCard = "# title: T\n# source: recalled\n# units: g\n# keyed: once\n# licence: facts\n# mark: from memory\n"

func refused(t *testing.T, card, table, want string) {
	t.Helper()
	if _, err := parseTable("t", card+table); err == nil || !strings.Contains(err.Error(), want) {
		t.Errorf("got %v, want an error with %q", err, want)
	}
}

func TestCellsNeedAMarkAndASource(t *testing.T) {
	for cell, want := range map[string]string{
		"1.2": "want VALUE", "1.2 m": "want VALUE", "1.2 x recalled": "mark", "1.2 m nobody1999": "bibliography",
		"1 2 3 m recalled": "between", "a m recalled": "not a number",
	} {
		if _, _, err := oneRow(t, "v", cell).Cell("v"); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: got %v, want an error with %q", cell, err, want)
		}
	}
	v, p, err := oneRow(t, "v", "12 10 14 r eu-annexes@V/29").Cell("v")
	if err != nil || v != (levigate.Range{Typical: 12, Low: 10, High: 14}) || p.Mark != cite.Read || p.From.At != "V/29" {
		t.Errorf("got %v %v %v", v, p, err)
	}
}

// oneRow makes a table of one row from a heading and cells, both with | as tab;
// cells left out at the end are empty. Columns it may have and lacks are empty
// too.
func oneRow(t *testing.T, head, cells string, columns ...string) Row {
	t.Helper()
	cells += strings.Repeat("|", strings.Count(head, "|")-strings.Count(cells, "|"))
	table, err := parseTable("t", testCard+strings.ReplaceAll(head+"\n"+cells+"\n", "|", "\t"))
	if err != nil {
		t.Fatal(err)
	}
	if len(columns) > 0 {
		if err := table.allow(columns); err != nil {
			t.Fatal(err)
		}
	}
	return table.Rows[0]
}

// A column nobody reads is refused; one that is left out reads as empty.
func TestColumnsAreKnownOrLeftOut(t *testing.T) {
	table, err := parseTable("t", testCard+"code\tcolour\nA\tred\n")
	if err != nil {
		t.Fatal(err)
	}
	if err := table.allow([]string{"code", "name"}); err == nil || !strings.Contains(err.Error(), `"colour" is not known`) {
		t.Errorf("got %v", err)
	}
	if err := table.allow([]string{"code", "colour", "name"}); err != nil || table.Rows[0].Text("name") != "" {
		t.Errorf("got %v and %q", err, table.Rows[0].Text("name"))
	}
}

// Words are marked as their table is, or as they say themselves; a number may
// be told several times over, and the first is used.
func TestFieldsKeepTheirMarks(t *testing.T) {
	r := oneRow(t, "inci|kind|charge|classes|hlb|solubility", "Sodium Oleate|other|anionic r eu-annexes@III/9|soap|18 r crc-physical; 20 m recalled|Aqua: 10 m recalled", substanceColumns...)
	e, err := readSubstance(r)
	if err != nil {
		t.Fatal(err)
	}
	if p := e.Marks["charge"]; e.Charge != levigate.Anionic || p.Mark != cite.Read || p.From.Key != "eu-annexes" {
		t.Errorf("charge %q, marked %v", e.Charge, p)
	}
	if p := e.Marks["classes"]; p.Mark != cite.FromMemory || p.From.Key != "recalled" {
		t.Errorf("classes marked %v, want the card's", p)
	}
	if len(e.HLB) != 2 || e.HLB[0].Typical != 18 || e.Marks["hlb"].From.Key != "crc-physical" {
		t.Errorf("HLB %v, marked %v", e.HLB, e.Marks["hlb"])
	}
	if d, ok := e.DissolvesIn("Aqua"); !ok || d.Typical != 10 || e.Marks["solubility/Aqua"].From.Key != "recalled" {
		t.Errorf("solubility %v", e.Solubility)
	}
}
