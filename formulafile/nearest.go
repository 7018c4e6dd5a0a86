package formulafile

import "strings"

// synonyms are words people write for a key, where no misspelling leads there.
var synonyms = map[string]string{
	"ingredients": "lines", "items": "lines", "formula": "lines",
	"ingredient": "material", "inci": "material", "raw-material": "material",
	"%": "percent", "amount": "percent", "share": "percent", "weight": "percent",
	"q.s.": "qs", "rest": "qs", "fill": "qs",
	"title": "name", "id": "code", "number": "code", "kind": "product", "type": "product",
	"steps": "making", "process": "making", "method": "making",
	"size": "batch", "temp": "temperature", "time": "minutes", "instruction": "text",
	"market": "markets", "claim": "claims", "note": "notes", "comment": "notes",
	"min": "low", "max": "high", "typical": "percent", "moisture": "water", "grade": "evidence", "supplier": "source",
	"version": "levigate", "schema": "levigate",
}

// nearestKey is the known key that an unknown one was probably meant to be.
func nearestKey(key string, known []string) string {
	key = strings.ToLower(strings.TrimSpace(strings.ReplaceAll(key, "_", "-")))
	if near := nearestWord(key, known); near != "" {
		return near
	}
	if s := synonyms[key]; s != "" {
		for _, k := range known {
			if k == s {
				return s
			}
		}
	}
	return ""
}

// nearestWord is the known word closest to one that is not known: a third of
// its letters may be wrong, or one may be within the other.
func nearestWord(word string, known []string) string {
	word = strings.ToLower(strings.TrimSpace(word))
	if n := len([]rune(word)); n == 0 || n > MaxCode {
		return ""
	}
	best, least := "", 1+max(1, len([]rune(word))/3)
	for _, k := range known {
		if d := distance(word, k); d < least {
			best, least = k, d
		}
	}
	if best != "" {
		return best
	}
	for _, k := range known {
		if len(word) > 3 && strings.Contains(k, word) || len(k) > 2 && strings.Contains(word, k) {
			return k
		}
	}
	return ""
}

// distance counts the letters to add, leave out, change or swap with their
// neighbour to come from one word to the other.
func distance(a, b string) int {
	x, y := []rune(a), []rune(b)
	rows := make([][]int, len(x)+1)
	for i := range rows {
		rows[i] = make([]int, len(y)+1)
		rows[i][0] = i
	}
	for j := range rows[0] {
		rows[0][j] = j
	}
	for i := 1; i <= len(x); i++ {
		for j := 1; j <= len(y); j++ {
			change := rows[i-1][j-1]
			if x[i-1] != y[j-1] {
				change++
			}
			d := min(change, rows[i-1][j]+1, rows[i][j-1]+1)
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				d = min(d, rows[i-2][j-2]+1)
			}
			rows[i][j] = d
		}
	}
	return rows[len(x)][len(y)]
}
