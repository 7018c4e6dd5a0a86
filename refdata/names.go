package refdata

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"levigate"
)

// LabelName is the name under which a market's ingredient list takes a
// substance. Everywhere the library's name stands unless a row says otherwise,
// except in the US, where a Latin name is no common name: without one on file
// the answer is false. Of a name that no table holds nobody here knows which
// language it is in.
func LabelName(inci, market string) (string, bool) {
	if row, ok := labelNames().rows[labelKey{strings.ToLower(inci), market}]; ok {
		return row, true
	}
	if market != "us" {
		return inci, true
	}
	us, onFile := labelNames().us[inci]
	switch {
	case us != "":
		return us, true
	case !onFile || Latin(inci):
		return "", false
	}
	return inci, true
}

// Latin reports whether an INCI name is in the Latin of ingredient lists: a
// trivial name (Aqua, Cera Alba), a plant by genus and species with its part
// (Vitis Vinifera Seed Oil), or a colour by its index number, which is no US
// name either. The tables leave us_name empty where the INCI name serves; this
// is the guard against an oversight there. In doubt it says yes: an open place
// in a list is seen, a wrong name is not.
func Latin(inci string) bool {
	words := strings.Fields(strings.ToLower(inci))
	if len(words) == 0 {
		return false
	}
	if slices.ContainsFunc(words, func(w string) bool { return slices.Contains(trivial, w) }) {
		return true
	}
	return len(words) >= 3 && slices.Contains(plantParts, words[len(words)-1]) && !slices.ContainsFunc(words, isChemistry)
}

// Recalled from the rules of naming, not re-read.
var (
	trivial = []string{
		"adeps", "aqua", "bombyx", "cera", "ci", "colla", "creta", "faex", "lac", "maris", "mel", "olus", "ovum",
		"paraffinum", "parfum", "pix", "sal", "serica", "solum",
	}
	plantParts = []string{
		"bran", "butter", "extract", "fiber", "flour", "gum", "juice", "oil", "powder", "resin", "starch", "water", "wax",
	}
)

// isChemistry reports whether a word makes a name an English one. The words are
// whole: Hydrocotyle and Polygonum are plants.
func isChemistry(word string) bool {
	return word == "hydrogenated" || strings.HasPrefix(word, "peg-") || strings.HasPrefix(word, "polyglyceryl-")
}

type labelKey struct{ inci, market string }

type labelSet struct {
	rows map[labelKey]string
	us   map[string]string // of every substance on file, empty where the INCI name serves
}

var labelNames = sync.OnceValue(func() labelSet {
	rows, err := readLabelNames(mustOpen("names/market"))
	if err != nil {
		panic("refdata: " + err.Error())
	}
	set := labelSet{rows: rows, us: map[string]string{}}
	for _, e := range Entries() {
		set.us[e.INCI] = e.USName
	}
	return set
})

func readLabelNames(t *Table) (map[labelKey]string, error) {
	out := map[labelKey]string{}
	for _, r := range t.Rows {
		key, name := labelKey{strings.ToLower(r.Text("inci")), r.Text("market")}, r.Text("name")
		from := strings.Fields(r.Text("from"))
		switch {
		case key.inci == "" || name == "":
			return nil, fmt.Errorf("%s: an INCI name and a name are needed", r.At())
		case !slices.Contains(levigate.Markets, key.market):
			return nil, fmt.Errorf("%s: market %q is not known", r.At(), key.market)
		case out[key] != "":
			return nil, fmt.Errorf("%s: %s stands twice", r.At(), r.Text("inci"))
		case len(from) != 2:
			return nil, fmt.Errorf("%s: column from: want MARK SOURCE", r.At())
		}
		if _, err := provenance(from[0], from[1]); err != nil {
			return nil, fmt.Errorf("%s: column from: %w", r.At(), err)
		}
		out[key] = name
	}
	return out, nil
}
