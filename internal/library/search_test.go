package library

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"levigate"
)

func TestSearchRanks(t *testing.T) {
	stuff := func(code, name, inci string, aliases ...string) *levigate.Material {
		return &levigate.Material{Code: code, Name: name, Declared: []levigate.Share{{INCI: inci, Substance: &levigate.Substance{INCI: inci, Aliases: aliases}}}}
	}
	x := NewIndex([]*levigate.Material{
		stuff("ZZ-1", "Burdock root extract in glycol", "Arctium Lappa Root Extract"),
		stuff("ZZ-2", "Polyglyceryl ester", "Polyglyceryl-3 Stearate"),
		stuff("ZZ-3", "Vegetable sweet water", "Glycerin"),
		stuff("ZZ-4", "Glycérine, pure", "Glycerol"),
		stuff("GLY-5", "Humectant", "Propanediol"),
		stuff("ZZ-6", "Kaolin, fine white", "Kaolin"),
		stuff("ZZ-7", "Green clay", "Illite", "Glyptic earth"),
	}, false)
	names := func(list []*levigate.Material) string {
		var out []string
		for _, m := range list {
			out = append(out, m.Code)
		}
		return strings.Join(out, " ")
	}
	for text, want := range map[string]string{
		"gly":         "GLY-5 ZZ-4 ZZ-7 ZZ-3 ZZ-1 ZZ-2", // begins on code or name, below, a word, within
		"GLYCÉRINE":   "ZZ-4",
		"white fine":  "ZZ-6",
		"zz-6":        "ZZ-6",
		"glyptic":     "ZZ-7",
		"no such":     "",
		"kaolin fine": "ZZ-6",
	} {
		if got := names(x.Search(text, 20)); got != want {
			t.Errorf("%q finds %s, want %s", text, got, want)
		}
	}
	if got := x.Search("", 3); len(got) != 3 {
		t.Errorf("nothing typed finds %d", len(got))
	}
	if got := x.Search("gly", 2); names(got) != "GLY-5 ZZ-4" {
		t.Errorf("two of them: %s", names(got))
	}
}

// Of names that begin alike the everyday raw material comes first.
func TestSearchKnowsTheEverydayOnes(t *testing.T) {
	x := NewIndex(nil, true)
	for text, want := range map[string]string{"gly": "GLY-99", "water": "WAT-PU", "xanth": "XAN-80", "kaol": "KAO-WH"} {
		if got := x.Search(text, 1); len(got) != 1 || got[0].Code != want {
			t.Errorf("%q finds %s first, want %s", text, got[0].Code, want)
		}
	}
}

// Every name on the shelf is found by itself, and what it finds means the same
// as the name on a line.
func TestSearchFindsTheShelf(t *testing.T) {
	x, lib := NewIndex(nil, true), New(nil)
	for _, e := range x.entries {
		got := x.Search(e.material.Name, 200)
		if len(got) == 0 || !slices.Contains(got, lib.Find(e.material.Name, nil).Material) {
			t.Errorf("%s is not found by its name", e.material.Name)
		}
	}
	if got := x.Search("glyc", 1); len(got) != 1 || !strings.HasPrefix(got[0].Name, "Glyc") {
		t.Errorf("glyc finds %v", got)
	}
}

// BenchmarkSearch looks among 5,000 raw materials with four names each.
func BenchmarkSearch(b *testing.B) {
	var many []*levigate.Material
	for i := range 5000 {
		many = append(many, &levigate.Material{Code: fmt.Sprintf("RM-%04d", i), Name: fmt.Sprintf("Sunflower oil %d, cold-pressed and filtered", i),
			Declared: []levigate.Share{{INCI: "Helianthus Annuus Seed Oil", Substance: &levigate.Substance{Aliases: []string{"Sunflower Seed Oil"}}}}})
	}
	x := NewIndex(many, false)
	for _, text := range []string{"s", "sunfl", "filtered oil", "nothing of it"} {
		b.Run(text, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				x.Search(text, 20)
			}
		})
	}
}
