package refdata

import (
	"strings"
	"testing"
)

func TestLabelNames(t *testing.T) {
	for _, c := range []struct{ inci, market, want string }{
		{"Aqua", "eu", "Aqua"}, {"Aqua", "gb", "Aqua"}, {"Aqua", "us", "Water"}, {"Mel", "us", "Honey"},
		{"Helianthus Annuus Seed Oil", "us", "Sunflower Seed Oil"}, {"Helianthus Annuus Seed Oil", "eu", "Helianthus Annuus Seed Oil"},
		{"Citrus Aurantium Dulcis Peel Oil", "eu", "Citrus Aurantium Peel Oil"},
		{"Citrus Aurantium Dulcis Peel Oil", "gb", "Citrus Aurantium Dulcis Peel Oil"},
		{"Citrus Aurantium Dulcis Peel Oil", "us", "Orange Peel Oil"},
		{"Jasminum Grandiflorum Flower Extract", "eu", "Jasmine Oil/Extract"}, // no substance of the library
		{"Glycerin", "us", "Glycerin"}, {"CI 77491", "us", "Iron Oxides"}, {"CI 77491", "eu", "CI 77491"},
		{"CI 77891", "us", "Titanium Dioxide"},
	} {
		if got, ok := LabelName(c.inci, c.market); !ok || got != c.want {
			t.Errorf("%s in %s: %q, %v; want %q", c.inci, c.market, got, ok, c.want)
		}
	}
	for _, inci := range []string{"Quercus Alba Bark Extract", "Jasminum Grandiflorum Flower Extract", "Something Unheard Of"} {
		if got, ok := LabelName(inci, "us"); ok || got != "" {
			t.Errorf("%s has the US name %q", inci, got)
		}
	}
}

// No substance's US name is its Latin name.
func TestNoLatinNameIsAUSName(t *testing.T) {
	for _, e := range Entries() {
		if name, ok := LabelName(e.INCI, "us"); ok && name == e.INCI && Latin(name) {
			t.Errorf("%s passes as its own US name", name)
		} else if !ok {
			t.Logf("%s has no US name on file; formulas for the US are told so", e.INCI)
		}
	}
}

func TestLatin(t *testing.T) {
	for inci, want := range map[string]bool{
		"Aqua": true, "Cera Alba": true, "Candelilla Cera": true, "Vitis Vinifera Seed Oil": true, "Cyamopsis Tetragonoloba Gum": true,
		"CI 77891": true, "Maris Sal": true, "Aloe Barbadensis Leaf Juice Powder": true,
		"Hydrocotyle Asiatica Extract": true, "Polygonum Cuspidatum Root Extract": true,
		"": false, "Glycerin": false, "Xanthan Gum": false, "Sucrose Laurate": false, "PEG-40 Hydrogenated Castor Oil": false,
		"Hydrogenated Castor Oil": false, "Hydrolyzed Wheat Protein": false, "Charcoal Powder": false, "Citric Acid": false,
	} {
		if Latin(inci) != want {
			t.Errorf("Latin(%q) = %v", inci, !want)
		}
	}
}

func TestBadLabelNamesAreRefused(t *testing.T) {
	const head = "inci|market|name|from|notes"
	for row, want := range map[string]string{
		"|us|Water|m recalled":       "are needed",
		"Aqua|us||m recalled":        "are needed",
		"Aqua|moon|Water|m recalled": "market",
		"Aqua|us|Water|recalled":     "MARK SOURCE",
		"Aqua|us|Water|x recalled":   "mark",
		"Aqua|us|Water|m nobody1999": "bibliography",
	} {
		if _, err := readLabelNames(oneRow(t, head, row).table); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: got %v, want an error with %q", row, err, want)
		}
	}
	table := oneRow(t, head, "Aqua|us|Water|m recalled").table
	table.Rows = append(table.Rows, table.Rows[0])
	if _, err := readLabelNames(table); err == nil || !strings.Contains(err.Error(), "twice") {
		t.Errorf("a name that stands twice: %v", err)
	}
}
