package program

import "strings"

// productWords are the product kinds whose words are not their name with spaces
// for dashes.
var productWords = map[string]string{
	"make-up-remover": "make-up remover",
	"hair-dye-semi":   "hair dye, semi-permanent",
	"sunscreen-lip":   "sunscreen for lips",
	"eau-de-toilette": "eau de toilette",
	"other-rinse-off": "other, rinse-off",
	"other-leave-on":  "other, leave-on",
}

// ProductWords names a kind of product for a person.
func ProductWords(product string) string {
	if words, ok := productWords[product]; ok {
		return words
	}
	return strings.ReplaceAll(product, "-", " ")
}
