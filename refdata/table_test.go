package refdata

import (
	"slices"
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
	for _, name := range slices.Concat(substanceTables, materialTables) {
		if !slices.Contains(names, name) {
			t.Errorf("%s is not embedded", name)
		}
	}
	for _, name := range names {
		folder, _, _ := strings.Cut(name, "/")
		known := slices.Concat(substanceTables, materialTables, []string{"substances/classes", "materials/declared", "materials/dry"})
		if (folder == "substances" || folder == "materials") && !slices.Contains(known, name) {
			t.Errorf("%s is embedded and nobody reads it", name)
		}
	}
}

func TestBadCardsAreRefused(t *testing.T) {
	good := "title: T\nsource: recalled\nunits: g\nkeyed: once\nlicence: facts\nmark: from memory\n"
	if _, err := parseTable("t", good, "a\tb\n1\t2\n"); err != nil {
		t.Fatal(err)
	}
	for old, want := range map[string]string{
		"licence: facts\n": "needs licence", "title: T\n": "needs title", "source: recalled\n": "needs source",
		"mark: from memory\n": "needs mark", "units: g\n": "needs units",
	} {
		refused(t, strings.Replace(good, old, "", 1), "a\tb\n1\t2\n", want)
	}
	refused(t, strings.Replace(good, "recalled", "nobody1999", 1), "a\n1\n", "not in the bibliography")
	refused(t, strings.Replace(good, "from memory", "certain", 1), "a\n1\n", "mark")
	refused(t, good+"colour: red\n", "a\n1\n", "not a card's key")
	refused(t, good, "a\tb\n1\n", "1 cells")
	refused(t, good, "a\ta\n1\t2\n", "twice")
	refused(t, good, "a\n", "no rows")
}

func refused(t *testing.T, card, table, want string) {
	t.Helper()
	if _, err := parseTable("t", card, table); err == nil || !strings.Contains(err.Error(), want) {
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
// cells left out at the end are empty.
func oneRow(t *testing.T, head, cells string) Row {
	t.Helper()
	cells += strings.Repeat("|", strings.Count(head, "|")-strings.Count(cells, "|"))
	card := "title: T\nsource: recalled\nunits: g\nkeyed: once\nlicence: facts\nmark: from memory\n"
	table, err := parseTable("t", card, strings.ReplaceAll(head+"\n"+cells+"\n", "|", "\t"))
	if err != nil {
		t.Fatal(err)
	}
	return table.Rows[0]
}
