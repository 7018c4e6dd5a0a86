package refdata

import (
	"slices"
	"strings"
	"testing"

	"levigate"
	"levigate/cite"
)

func TestPairs(t *testing.T) {
	listed := map[string]bool{}
	for _, r := range mustOpen("words/classes").Rows {
		listed[r.Text("class")] = true
	}
	keys := map[string]bool{}
	for _, p := range Pairs() {
		if keys[p.Key] {
			t.Errorf("%s stands twice", p.Key)
		}
		keys[p.Key] = true
		for _, kind := range []string{p.A, p.B} {
			if kind == strings.ToLower(kind) && !listed[kind] {
				t.Errorf("%s: %q is not on the list of classes", p.Key, kind)
			}
		}
		if p.Capacity.Known() && p.Exchange.Known() {
			t.Errorf("%s: a capacity and an exchange: which counts?", p.Key)
		}
		if p.Least <= 0 {
			t.Errorf("%s speaks of no powder at all", p.Key)
		}
		if p.Mark == cite.Read && slices.ContainsFunc(p.Sources, func(r cite.Ref) bool { return r.Key == "recalled" || r.Key == "trade-practice" }) {
			t.Errorf("%s is marked read and names no source that was", p.Key)
		}
		for _, text := range []string{p.Why, p.Do} {
			if strings.HasSuffix(text, ".") || strings.ToLower(text[:1]) != text[:1] && !strings.HasPrefix(text, "pH") {
				t.Errorf("%s: %q follows a colon and is followed by a stop", p.Key, text)
			}
		}
	}
}

// Ascorbic acid and bakuchiol beside charcoal or clay are kept apart by habit.
// No row may claim that the pair with a clay was measured.
func TestCommonPracticeStaysMarkedSo(t *testing.T) {
	for _, p := range Pairs() {
		if p.B == "bakuchiol" && p.Mark != cite.CommonPractice || p.Key == "clay-ascorbic" && p.Mark != cite.CommonPractice {
			t.Errorf("%s is marked %s", p.Key, p.Mark)
		}
	}
}

// What is said of one substance must be asked before what is said of its class,
// or it would never be heard.
func TestNarrowPairsStandFirst(t *testing.T) {
	place := map[string]int{}
	for i, p := range Pairs() {
		place[p.Key] = i
	}
	for _, order := range [][2]string{
		{"charcoal-methylparaben", "charcoal-phenolic-preservative"},
		{"charcoal-phenolic-preservative", "charcoal-preservative"},
		{"iron-ferulic", "iron-phenolic-antioxidant"},
		{"iron-hydroxamic", "charcoal-preservative"},
		{"kaolin-cationic", "clay-cationic"},
		{"smectite-cationic", "clay-cationic"},
		{"iron-ascorbic", "clay-ascorbic"},
		{"iron-bakuchiol", "clay-bakuchiol"},
	} {
		first, ok1 := place[order[0]]
		second, ok2 := place[order[1]]
		if !ok1 || !ok2 || first > second {
			t.Errorf("%s must stand before %s", order[0], order[1])
		}
	}
}

func TestBadPairsAreRefused(t *testing.T) {
	head := strings.Split("key a b least water capacity exchange level mark from why do", " ")
	good := []string{"k", "clay", "Thymol", "0.5", "yes", "177 r ziyat2020", "", "warn", "read", "ziyat2020@abstract; delgado2016", "why", "do"}
	read := func(change map[string]string) ([]Pair, error) {
		row := slices.Clone(good)
		for column, v := range change {
			row[slices.Index(head, column)] = v
		}
		table, err := parseTable("pairs/t", testCard+strings.Join(head, "\t")+"\n"+strings.Join(row, "\t")+"\n")
		if err != nil {
			t.Fatal(err)
		}
		return readPairs(table)
	}
	p, err := read(nil)
	if err != nil {
		t.Fatal(err)
	}
	if got := p[0]; got.Capacity != levigate.Exactly(177) || !got.Water || len(got.Sources) != 2 || got.Sources[0].At != "abstract" {
		t.Errorf("read as %+v", got)
	}
	for column, bad := range map[string]string{
		"key": "", "a": "", "b": "", "why": "", "do": "", "least": "some", "water": "maybe", "capacity": "177",
		"exchange": "1 x ziyat2020", "level": "stop", "mark": "certain", "from": "nobody1999",
	} {
		if _, err := read(map[string]string{column: bad}); err == nil || !strings.Contains(err.Error(), "pairs/t.tsv:8") {
			t.Errorf("%s %q: %v", column, bad, err)
		}
	}
}
