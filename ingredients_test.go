package levigate

import (
	"slices"
	"testing"
)

func TestListMarkets(t *testing.T) {
	for _, c := range []struct{ named, known, others []string }{
		{nil, []string{"eu"}, nil},
		{[]string{"US", "eu", "us"}, []string{"us", "eu"}, nil},
		{[]string{"gb", "moon"}, []string{"gb"}, []string{"moon"}},
		{[]string{"moon"}, nil, []string{"moon"}}, // no other market's list stands in for it
	} {
		known, others := (&Formula{Markets: c.named}).ListMarkets()
		if !slices.Equal(known, c.known) || !slices.Equal(others, c.others) {
			t.Errorf("%v: %v and %v", c.named, known, others)
		}
	}
}

func TestLineLeavesAnOpenPlace(t *testing.T) {
	is := Ingredients{
		{Market: "eu", Name: "Aqua"},
		{Market: "us", Name: "Water"}, {Market: "us", INCI: []string{"Vitis Vinifera Seed Oil"}}, {Market: "us", Name: "Honey"},
	}
	if got := is.Of("us").Line(); got != "Water, [US name missing], Honey" {
		t.Error(got)
	}
}
